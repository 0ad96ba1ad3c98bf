using System.Globalization;
using WorkWindows.Engine.Stands.Suitability;

namespace WorkWindows.Service.Stands;

/// <summary>The words of a stand.</summary>
public static class StandWords
{
    public static string Of(Fit fit) => fit switch
    {
        Fit.Fits => "Yes",
        Fit.WithCare => "With care",
        Fit.No => "No",
        Fit.Unknown => "Not known",
    };

    /// <summary>How well founded a finding is, and where it is stated.</summary>
    public static string SourceOf(FindingView finding) =>
        finding.Source.StartsWith(finding.Authority, StringComparison.Ordinal)
            ? finding.Source
            : $"{finding.Authority}: {finding.Source}";

    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>As it was typed: a form gives back what it was given.</summary>
    public static string Typed(double? value) => value?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";

    public static string Percent(RangeView range) => $"{Whole(range)} %";

    public static string Hours(RangeView range) => string.Create(
        CultureInfo.InvariantCulture, $"{range.Low:0.#} to {range.High:0.#} hours");

    /// <summary>What, now, and after.</summary>
    public static IEnumerable<(string What, string Now, string After)> Rows(StandView view) =>
    [
        ("Canopy cover", Percent(view.Now.CanopyCoverPercent), Percent(view.After.CanopyCoverPercent)),
        ("Basal area", $"{Number(view.Now.BasalAreaFt2PerAcre)} ft²", $"{Number(view.After.BasalAreaFt2PerAcre)} ft²"),
        ("Stems", Number(view.Now.StemsPerAcre), Number(view.After.StemsPerAcre)),
        ("Mean diameter (quadratic)", Inches(view.Now), Inches(view.After)),
        ("Stand density index", Number(view.Now.DensityIndex), Number(view.After.DensityIndex)),
        ("Stocking, upland oak", $"{Number(view.Now.StockingPercent)} %", $"{Number(view.After.StockingPercent)} %"),
        ("Crown competition factor", $"{Number(view.Now.CrownCompetitionPercent)} %", $"{Number(view.After.CrownCompetitionPercent)} %"),
    ];

    private static string Inches(StandNumbers numbers) =>
        numbers.QuadraticMeanDiameterIn is { } mean ? $"{Number(mean)} in" : "none";

    private static string Whole(RangeView range)
    {
        var (low, high) = (Math.Round(range.Low), Math.Round(range.High));
        return low == high ? Number(low) : $"{Number(low)} to {Number(high)}";
    }
}
