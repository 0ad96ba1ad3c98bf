using System.Collections.Immutable;
using System.Globalization;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Engine.Stands.Suitability;

/// <summary>Whether a stand is ready for hinge cutting, and how it is done there.</summary>
public static class HingeStand
{
    private const string NoSource = "common practice, no source";

    /// <summary>What is said of the stand as a whole. Hinged stems lie down: crowns are counted that stand above them.</summary>
    /// <param name="stand">The stand as it is when the hinges are cut, with the stems that will be hinged.</param>
    /// <param name="limits">What hinge cutting keeps within.</param>
    /// <param name="flags">What is noted of the parcel.</param>
    /// <param name="pocketAcres">The size of the pocket, acres; null where it is not planned.</param>
    public static ImmutableArray<SuitabilityFinding> Of(
        Stand stand, HingeLimits limits, IReadOnlyCollection<SiteFlag> flags, double? pocketAcres) =>
    [
        Canopy(CoverWithout(stand, limits, Fit.Fits, Fit.WithCare), limits),
        .. pocketAcres is { } acres ? new[] { Pocket(acres, limits) } : [],
        Cut(limits),
        new("leave-be", Fit.No,
            "Leave stems that lean hard, hang in others, are rotten or laced with vines, and keep off where a dead ash could fall.",
            Authority.CommonPractice, NoSource),
        new("clear-first", Fit.WithCare,
            "Clear what was felled first, so that nothing overhead is left to fall and trails stay open.",
            Authority.CommonPractice, NoSource),
        // Whoever tries what is not known to bend takes that cover too.
        .. Bats(CoverWithout(stand, limits, Fit.Fits, Fit.WithCare, Fit.Unknown), limits, flags),
    ];

    /// <summary>
    /// Of a class that crosses a limit nobody knows how many stems are hinged: none of them, or, where its middle may be, all.
    /// </summary>
    private static ValueRange CoverWithout(Stand stand, HingeLimits limits, params Fit[] hinged)
    {
        return new(
            stand.Without((stems, _) => IsHinged(stems, stems.DbhIn) ? 1 : 0).CanopyCoverPercent.Low,
            stand.Without((stems, _) => stems.Ends.All(end => IsHinged(stems, end)) ? 1 : 0).CanopyCoverPercent.High);

        bool IsHinged(StemClass stems, double dbhIn) =>
            hinged.Contains(HingeTrees.Of(stems with { DbhIn = dbhIn }, limits).Fit);
    }

    private static SuitabilityFinding Canopy(ValueRange coverPercent, HingeLimits limits)
    {
        var cover = $"Crowns above what may be hinged cover {Percent(coverPercent)} of the ground.";
        var rule = $"Hinges shaded by more than {limits.ClosedCanopyPercent:0} % die in about three years.";
        var fit = coverPercent.Low > limits.ClosedCanopyPercent ? Fit.No
            : coverPercent.High > limits.ClosedCanopyPercent ? Fit.Unknown : Fit.Fits;
        var ask = fit switch
        {
            Fit.No => " Remove canopy first.",
            Fit.Unknown => " Whether canopy must be removed first is not known: the thick stems of a class, or species without a published crown, decide it.",
            _ => "",
        };
        return new("canopy", fit, $"{cover} {rule}{ask}", Authority.CommonPractice, NoSource);
    }

    private static SuitabilityFinding Pocket(double acres, HingeLimits limits)
    {
        var fits = acres >= limits.PocketAcres.Low && acres <= limits.PocketAcres.High;
        return new("pocket", fits ? Fit.Fits : Fit.WithCare,
            string.Create(CultureInfo.InvariantCulture,
                $"The pocket has {acres:0.##} acres; {limits.PocketAcres.Low:0.##} to {limits.PocketAcres.High:0.##} are usual."),
            Authority.CommonPractice, NoSource);
    }

    private static SuitabilityFinding Cut(HingeLimits limits) => new("cut", Fit.WithCare,
        string.Create(CultureInfo.InvariantCulture,
            $"Cut level, about half through, {limits.CutHeightFt.Low:0.#} to {limits.CutHeightFt.High:0.#} ft up, about the hip. ")
        + "Never at the height of the face.",
        Authority.CommonPractice, NoSource);

    private static IEnumerable<SuitabilityFinding> Bats(
        ValueRange coverPercent, HingeLimits limits, IReadOnlyCollection<SiteFlag> flags)
    {
        if (flags.Contains(SiteFlag.RoostTree) || flags.Contains(SiteFlag.BatHabitat))
        {
            yield return new("roost-trees", Fit.WithCare, "Mark roost trees and keep them, with cover around them.",
                Authority.AgencyGuideline, "US Fish and Wildlife Service, docs/rules/bats.md");
        }
        if (!flags.Contains(SiteFlag.BatHabitat))
            yield break;
        var fit = coverPercent.High < limits.BatCoverPercent ? Fit.No
            : coverPercent.Low < limits.BatCoverPercent ? Fit.Unknown : Fit.Fits;
        yield return new("bat-cover", fit,
            $"Summer habitat of Indiana bats keeps {limits.BatCoverPercent:0} % cover, also once the hinges lie; this stand has "
            + $"{Percent(coverPercent)} then. Where hinges need more light than that leaves, bats come first: do not hinge here.",
            Authority.AgencyGuideline, "US Fish and Wildlife Service, docs/rules/bats.md");
    }

    private static string Percent(ValueRange percent) => percent.IsOne
        ? $"{percent.Low:0} %"
        : $"{percent.Low:0} to {percent.High:0} %";
}
