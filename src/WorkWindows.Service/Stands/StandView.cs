using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Crowns;
using WorkWindows.Engine.Stands.Hours;
using WorkWindows.Engine.Stands.Sprouts;
using WorkWindows.Engine.Stands.Suitability;

namespace WorkWindows.Service.Stands;

/// <summary>A number that may be a range because published models differ; both ends are the same where they do not.</summary>
public sealed record RangeView(double Low, double High)
{
    public static RangeView Of(ValueRange range) => new(Math.Round(range.Low, 2), Math.Round(range.High, 2));
}

/// <summary>The numbers of a stand, an acre.</summary>
public sealed record StandNumbers(
    double StemsPerAcre, double BasalAreaFt2PerAcre, double? QuadraticMeanDiameterIn, double DensityIndex,
    double StockingPercent, double CrownCompetitionPercent, RangeView CanopyCoverPercent)
{
    public static StandNumbers Of(Stand stand) => new(
        Math.Round(stand.StemsPerAcre, 1), Math.Round(stand.BasalAreaFt2PerAcre, 1),
        stand.QuadraticMeanDiameterIn is { } mean ? Math.Round(mean, 1) : null, Math.Round(stand.DensityIndex),
        Math.Round(stand.StockingPercent), Math.Round(stand.CrownCompetitionPercent), RangeView.Of(stand.CanopyCoverPercent));
}

/// <summary>What a finding says.</summary>
public sealed record FindingView(string Key, Fit Fit, string Says, string Authority, string Source)
{
    public static FindingView Of(SuitabilityFinding finding) =>
        new(finding.Key, finding.Fit, finding.Says, Wording.Of(finding.Authority), finding.Source);
}

/// <summary>One class of the inventory.</summary>
/// <param name="Species">The species.</param>
/// <param name="DbhMinIn">Lower end of the diameter class, inches.</param>
/// <param name="DbhMaxIn">Upper end, inches.</param>
/// <param name="StemsPerAcre">Stems an acre.</param>
/// <param name="FelledPercent">How many of them are felled in what is asked.</param>
/// <param name="SproutsPercent">Share of severed stumps that sprout; null where stumps do not.</param>
/// <param name="SuckersPerAcre">Shoots from the roots after what is felled; null for species that sprout from the stump.</param>
/// <param name="Hinge">Whether it takes a hinge.</param>
public sealed record StemView(
    string Species, double DbhMinIn, double DbhMaxIn, double StemsPerAcre, double FelledPercent, RangeView? SproutsPercent,
    RangeView? SuckersPerAcre, FindingView Hinge);

/// <summary>A parcel's stand now and after a removal.</summary>
/// <param name="Parcel">The parcel's name.</param>
/// <param name="Property">The name of its property.</param>
/// <param name="Stems">The inventory; none where it was never taken.</param>
/// <param name="Now">The numbers as it stands.</param>
/// <param name="After">The same after the removal that is asked.</param>
/// <param name="HoursPerAcre">What felling it takes a sawyer with a helper, hours an acre.</param>
/// <param name="Findings">What is to be known before hinges are cut in what is left.</param>
/// <param name="Assumed">What the numbers rest on that nobody measured.</param>
public sealed record StandView(
    string Parcel, string Property, IReadOnlyList<StemView> Stems, StandNumbers Now, StandNumbers After,
    RangeView HoursPerAcre, IReadOnlyList<FindingView> Findings, IReadOnlyList<string> Assumed)
{
    /// <param name="input">The parcel.</param>
    /// <param name="felledPercent">Of each row of its inventory, 0 to 100; rows that are left out stay.</param>
    /// <param name="pocketAcres">The pocket of hinged trees that is meant, acres; null where it is not known.</param>
    public static StandView Of(StandInput input, IReadOnlyList<double> felledPercent, double? pocketAcres)
    {
        var (limits, stand) = (input.Limits, input.Stand);
        var felled = stand.Classes.Select((stems, row) => (stems, Percent: row < felledPercent.Count ? felledPercent[row] : 0))
            .ToArray();
        var after = stand.Without((_, row) => felled[row].Percent / 100);
        return new(
            input.Parcel, input.Property,
            [.. felled.Select((one, row) => Row(input.Rows[row], one.stems, one.Percent, limits))],
            StandNumbers.Of(stand), StandNumbers.Of(after),
            RangeView.Of(WorkRates.CuttingHours(felled.Select(one => (one.stems.DbhIn, one.stems.StemsPerAcre * one.Percent / 100)))),
            [.. HingeStand.Of(after, limits, input.Flags, pocketAcres).Select(FindingView.Of)],
            [.. Assumptions(input)]);
    }

    private static StemView Row(Properties.StandRow row, StemClass stems, double percent, HingeLimits limits) => new(
        stems.Species.Name, row.DbhMinIn, row.DbhMaxIn, stems.StemsPerAcre, percent,
        Sprouting.Share(stems.Species, stems.DbhIn) is { } share ? RangeView.Of(share * 100) : null,
        Sprouting.Suckers(stems.Species)
            ? RangeView.Of(Sprouting.SuckersPerAcre(
                TreeFormulas.BasalAreaFt2(stems.DbhIn) * stems.StemsPerAcre * percent / 100))
            : null,
        FindingView.Of(HingeTrees.OfClass(stems.Species, new(row.DbhMinIn, row.DbhMaxIn), limits)));

    private static IEnumerable<string> Assumptions(StandInput input)
    {
        var stand = input.Stand;
        if (input.ElevationIsAssumed)
            yield return $"How high the parcel lies is not known: crowns are those of {StandReader.ReferenceElevationFt:0} ft.";
        if (stand.Crowns.CrownIsAssumed)
            yield return $"Living crowns take {CrownSite.AssumedLiveCrownPercent:0} % of each tree's height: nobody measured them.";
        var without = stand.Classes.Where(stems => !CrownWidths.IsPublished(stems.Species))
            .Select(stems => stems.Species.Name).Distinct().ToArray();
        if (without.Length > 0)
            yield return $"No crown is published for {string.Join(", ", without)}: cover is a range.";
        yield return "Sprouting is that of severed stumps. What becomes of stems on a hinge is published nowhere.";
    }
}
