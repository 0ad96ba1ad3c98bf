using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>The rule packs that stand for each property: the service's, the organization's and its own.</summary>
public sealed class PackShelf(WorkWindowsDb db, RulePacks shipped, IMemoryCache cache)
{
    private static readonly TimeSpan KeptFor = TimeSpan.FromHours(1);

    public Task<PackStacks> ReadAsync(CancellationToken cancellation) => ReadAsync(null, cancellation);

    /// <param name="without">A pack to leave out, which need not be readable.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <exception cref="PackException">Another pack cannot be read by this version of the service.</exception>
    public async Task<PackStacks> ReadAsync(string? without, CancellationToken cancellation)
    {
        var rows = await db.OrganizationPacks.AsNoTracking().Where(pack => pack.PackId != without).Select(
            pack => new { pack.PropertyId, pack.Hash })
            .ToListAsync(cancellation);
        var missing = rows.Select(row => row.Hash).Where(hash => !cache.TryGetValue(Key(hash), out _)).ToList();
        var texts = missing.Count == 0 ? [] : await db.StoredPacks.AsNoTracking()
            .Where(pack => missing.Contains(pack.Hash))
            .ToDictionaryAsync(pack => pack.Hash, pack => pack.Text, cancellation);
        var own = rows.Select(row => (row.PropertyId, Pack: Pack(row.Hash, texts))).ToArray();
        return new(
            PackStack.InOrder(shipped.Packs.Concat(own.Where(row => row.PropertyId is null).Select(row => row.Pack))),
            own.Where(row => row.PropertyId is not null).ToLookup(row => row.PropertyId!.Value, row => row.Pack));
    }

    /// <summary>What a text says depends on the text alone, so organizations may share what was read of it.</summary>
    private RulePack Pack(string hash, Dictionary<string, string> texts) => cache.GetOrCreate(Key(hash), entry =>
    {
        entry.SlidingExpiration = KeptFor;
        return RulePackReader.Read(texts[hash]);
    })!;

    private static (string, string) Key(string hash) => ("rule-pack", hash);
}

/// <summary>Rule packs, stacked for each property.</summary>
public sealed class PackStacks(ImmutableArray<RulePack> shared, ILookup<Guid, RulePack> ofProperties)
{
    private readonly Dictionary<Guid, ImmutableArray<RulePack>> _own = [];

    /// <summary>Packs that stand for whatever property is asked for.</summary>
    public static PackStacks Of(IEnumerable<RulePack> packs) =>
        new(PackStack.InOrder(packs), Array.Empty<RulePack>().ToLookup(_ => Guid.Empty));

    /// <summary>The packs that every property has: the service's and the organization's.</summary>
    public ImmutableArray<RulePack> Shared => shared;

    /// <summary>The packs of single properties.</summary>
    public ILookup<Guid, RulePack> OfProperties => ofProperties;

    /// <summary>Whether packs stand for a property that do not stand for others.</summary>
    public bool HasOwn(Guid property) => ofProperties.Contains(property);

    /// <summary>The packs of a property, higher ones first.</summary>
    public ImmutableArray<RulePack> Of(Guid property)
    {
        if (!HasOwn(property))
            return shared;
        if (!_own.TryGetValue(property, out var packs))
            _own[property] = packs = PackStack.InOrder(shared.Concat(ofProperties[property]));
        return packs;
    }

    /// <summary>Every pack that stands for one of some properties.</summary>
    public IEnumerable<RulePack> OfAny(IEnumerable<Guid> properties) =>
        shared.Concat(properties.SelectMany(property => ofProperties[property]));
}
