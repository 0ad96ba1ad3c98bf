using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Help;

/// <summary>A rule with the pack that it stands in.</summary>
public sealed record HelpRule(RulePack Pack, Rule Rule)
{
    public string Address => $"/help/rules/{Rule.Id}";

    /// <summary>The practices that it may speak of.</summary>
    public IEnumerable<Practice> Practices => PracticeCatalogue.All.Where(SpeaksOf);

    /// <summary>The comparisons that its condition is made of, as in 'least temperature below 20 °F'.</summary>
    public IReadOnlyList<string> Limits =>
        [.. Compared(Rule.When).Select(compare => $"{Wording.Of(compare.Signal)} {Wording.Limit(compare)}").Distinct()];

    /// <summary>Where the source can be read on the web, or null.</summary>
    public string? Web => RuleReason.WebAddress(Rule.Source.Address);

    /// <summary>The years that the source speaks of; null for any.</summary>
    public string? Years => Rule.Valid is { From: null, To: null } ? null : RuleReason.YearsOf(Rule.Valid);

    /// <summary>On which land it counts; empty for all.</summary>
    public string Where => string.Join("; ", new[]
    {
        string.Join(", ", Rule.Scope.States),
        Rule.Scope.Counties.IsEmpty ? "" : DayWords.Count(Rule.Scope.Counties.Count, "county", "counties"),
        Rule.Scope.SpeciesGroups.IsEmpty ? "" : $"stands with {string.Join(" or ", Rule.Scope.SpeciesGroups.Select(Wording.Of))}",
        string.Join(" or ", Rule.Scope.SiteFlags.Select(HelpWords.Of)),
        Rule.Scope.Area is null ? "" : "an area of its own",
    }.Where(part => part.Length > 0));

    /// <summary>Whether somebody may set it aside, in a sentence.</summary>
    public string Exceptions => Rule switch
    {
        { LifeSafety: true } => "None: it keeps people from being hurt.",
        { Authority: Authority.Regulation } => "None: it is law.",
        { MayBeExcepted: true } => "A consultant may make one for a task, a parcel or a property, with a reason that is kept.",
        _ => "It closes and limits nothing.",
    };

    public bool SpeaksOf(Practice practice) =>
        (Rule.Scope.Practices.IsEmpty || Rule.Scope.Practices.Contains(practice.Id))
        && (Rule.Scope.Traits == PracticeTraits.None || (Rule.Scope.Traits & practice.Traits) != 0);

    private static IEnumerable<Compare> Compared(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(Compared),
        AnyOf any => any.Parts.SelectMany(Compared),
        Not not => Compared(not.Part),
        Compare compare => [compare],
        InARow row => [row.Each],
        Latched latched => [latched.Starts, latched.Ends],
        Onset onset => Compared(onset.First),
        _ => [],
    };
}

/// <summary>The rules that are explained.</summary>
public sealed class HelpShelf(PackShelf packs, VisibleProperties visible)
{
    /// <returns>Those of all land, and those of single properties that the caller sees; in the order of the packs.</returns>
    public async Task<IReadOnlyList<HelpRule>> RulesAsync(CancellationToken cancellation)
    {
        var stacks = await packs.ReadAsync(cancellation);
        var seen = stacks.OfProperties.Count == 0 ? [] : await visible.All.Select(property => property.Id).ToListAsync(cancellation);
        var own = stacks.OfProperties.Where(property => seen.Contains(property.Key)).SelectMany(packs => packs)
            .DistinctBy(pack => pack.Hash);
        return [.. stacks.Shared.Concat(own).SelectMany(pack => pack.Rules, (pack, rule) => new HelpRule(pack, rule))];
    }
}
