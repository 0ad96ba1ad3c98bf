using System.Globalization;
using System.Text.Json;
using Shouldly;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Tests.Rules.Packs;

/// <summary>
/// What the cases cannot see of a shipped rule: its effect, its authority, whether anybody may lift it, whom it speaks
/// of and the years of its source. A change of one of them must be read in RuleTable.approved.txt.
/// </summary>
public class RuleTableTests
{
    [Fact]
    public void Rules_AreAsApproved() =>
        string.Concat(ShippedPacks.Read().SelectMany(pack => pack.Rules).Select(rule => $"{Line(rule)}\n"))
            .ShouldMatchApproved(options => options.WithFilenameGenerator(
                (_, _, type, extension) => $"RuleTable.{type}.{extension}").NoDiff());

    private static string Line(Rule rule) => string.Join(
        "; ", rule.Id, Word(rule.Effect), Word(rule.Authority),
        rule.LifeSafety ? "life-safety yes" : "life-safety no", Summary(rule.Scope), Years(rule.Valid));

    private static string Summary(Scope scope)
    {
        string[] parts =
        [
            .. scope.Practices.Count == PracticeCatalogue.All.Length ? ["every practice"] : scope.Practices,
            .. Enum.GetValues<PracticeTraits>()
                .Where(trait => trait != PracticeTraits.None && scope.Traits.HasFlag(trait)).Select(Word),
            .. scope.States,
            .. scope.Counties,
            .. scope.SpeciesGroups.Select(Word),
            .. scope.SiteFlags.Select(Word),
            .. scope.Organizations,
            .. scope.Area is { } area
                ? area.Corners.Select(corner => string.Create(
                    CultureInfo.InvariantCulture, $"({corner.LatitudeDeg} {corner.LongitudeDeg})"))
                : [],
        ];
        return string.Join(" ", parts);
    }

    private static string Years(ValidYears valid) => $"{valid.From} to {valid.To}".Trim();

    private static string Word<T>(T member) where T : struct, Enum =>
        JsonNamingPolicy.KebabCaseLower.ConvertName($"{member}");
}
