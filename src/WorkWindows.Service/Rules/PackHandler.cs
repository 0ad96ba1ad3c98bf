using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Rules;

/// <summary>
/// Takes in, replaces and removes rule packs of an organization. A pack with an error changes nothing.
/// </summary>
public sealed class PackHandler(
    WorkWindowsDb db, CurrentOrganization organization, RulePacks shipped, PackShelf shelf, AuditLog audit,
    PromptLook look, Caller caller, IClock clock)
{
    /// <param name="packId">The key that the text must state.</param>
    /// <param name="propertyId">The property that it is for; null for all of the organization's.</param>
    /// <param name="text">The text of the pack's file.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Change<OrganizationPack>> PutAsync(
        string packId, Guid? propertyId, string text, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (propertyId is { } property && !await db.Properties.AnyAsync(row => row.Id == property, cancellation))
            return Change.NotFound<OrganizationPack>();
        if (shipped.Find(packId) is not null)
            return Change.Conflict<OrganizationPack>($"The pack '{packId}' comes with the service; choose another.");
        var kept = await FindAsync(packId, cancellation);
        if (kept is not null && kept.PropertyId != propertyId)
            return Change.Conflict<OrganizationPack>($"The pack '{packId}' stands elsewhere; remove it there first.");
        var stacks = await shelf.ReadAsync(packId, cancellation);
        var others = propertyId is { } own ? stacks.Of(own) : stacks.Shared;
        RulePack pack;
        try
        {
            var level = propertyId is null ? PackLevel.Organization : PackLevel.Property;
            pack = RulePackReader.Read(text, others, new(packId, level));
        }
        catch (PackException wrong)
        {
            return Change.Unprocessable<OrganizationPack>(
                $"The pack has {wrong.Faults.Count} faults.",
                ("faults", wrong.Faults.Select(fault => new
                {
                    fault.Line,
                    fault.Column,
                    fault.Key,
                    fault.Value,
                    fault.Accepted,
                })));
        }
        if (kept?.Hash == pack.Hash)
            return Change.Done(kept);
        if (caller.PersonId is null && pack.Rules.Any(rule => rule.Effect == Effect.Lifts))
        {
            return Change.Forbidden<OrganizationPack>(
                $"The pack '{packId}' lifts rules, and somebody must answer for that by name: a consultant who has "
                + "signed in may hand it in, and no key of a machine.");
        }
        if (await db.StoredPacks.AnyAsync(
            stored => stored.PackId == packId && stored.Version == pack.Version && stored.Hash != pack.Hash,
            cancellation))
        {
            return Change.Conflict<OrganizationPack>(
                $"The version '{pack.Version}' of the pack '{packId}' is kept with another text; raise the version.");
        }
        if (kept is not null && !PackVersion.IsHigher(pack.Version, kept.Version))
        {
            return Change.Conflict<OrganizationPack>(
                $"The pack '{packId}' stands at the version '{kept.Version}', and '{pack.Version}' is not a higher one; "
                + "raise the version, for an earlier text too.");
        }
        if (propertyId is null && await BrokenAsync(stacks, others.Add(pack), cancellation) is { } broken)
            return Change.Conflict<OrganizationPack>(broken);

        var before = kept is null ? null : PackView.Of(kept);
        if (!await db.StoredPacks.AnyAsync(stored => stored.Hash == pack.Hash, cancellation))
            db.Add(new StoredPack { Hash = pack.Hash, PackId = packId, Version = pack.Version, Text = text });
        var now = clock.GetCurrentInstant();
        if (kept is null)
        {
            kept = new()
            {
                PackId = packId,
                PropertyId = propertyId,
                Version = pack.Version,
                Hash = pack.Hash,
                ChangedAt = now,
            };
            db.Add(kept);
        }
        (kept.Version, kept.Hash, kept.ChangedAt, kept.ChangedById) = (pack.Version, pack.Hash, now, caller.PersonId);
        await audit.AddAsync(AuditKind.RulePack, kept.Id, before, PackView.Of(kept), cancellation);
        await SaveAsync(change, cancellation);
        return Change.Done(kept);
    }

    /// <summary>Removes a pack; its texts stay, because decisions rely on them.</summary>
    public async Task<Change<OrganizationPack>> DeleteAsync(string packId, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await FindAsync(packId, cancellation) is not { } kept)
            return shipped.Find(packId) is null
                ? Change.NotFound<OrganizationPack>()
                : Change.Conflict<OrganizationPack>($"The pack '{packId}' comes with the service and stays.");
        var stacks = await shelf.ReadAsync(packId, cancellation);
        if (kept.PropertyId is null && await BrokenAsync(stacks, stacks.Shared, cancellation) is { } broken)
            return Change.Conflict<OrganizationPack>(broken);
        db.Remove(kept);
        await audit.AddAsync(AuditKind.RulePack, kept.Id, PackView.Of(kept), null, cancellation);
        await SaveAsync(change, cancellation);
        return Change.Done(kept);
    }

    private Task<OrganizationPack?> FindAsync(string packId, CancellationToken cancellation) =>
        db.OrganizationPacks.SingleOrDefaultAsync(pack => pack.PackId == packId, cancellation);

    /// <returns>What would no longer stand if the shared packs were these; null when everything would.</returns>
    private async Task<string?> BrokenAsync(
        PackStacks stacks, ImmutableArray<RulePack> shared, CancellationToken cancellation)
    {
        var hashes = stacks.OfProperties.SelectMany(packs => packs).Select(pack => pack.Hash).ToList();
        var texts = await db.StoredPacks.AsNoTracking().Where(pack => hashes.Contains(pack.Hash))
            .ToDictionaryAsync(pack => pack.Hash, pack => pack.Text, cancellation);
        foreach (var packs in stacks.OfProperties)
        {
            foreach (var pack in packs)
            {
                try
                {
                    RulePackReader.Read(texts[pack.Hash], shared.AddRange(packs.Where(other => other != pack)));
                }
                catch (PackException wrong)
                {
                    return $"The pack '{pack.Id}' of the property {packs.Key} could not stand beside this: "
                        + wrong.Message;
                }
            }
        }
        return null;
    }

    private async Task SaveAsync(OrganizationChange change, CancellationToken cancellation)
    {
        look.Note();
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
    }
}
