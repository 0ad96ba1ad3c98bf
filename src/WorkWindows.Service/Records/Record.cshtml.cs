using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Phenology;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Records;

/// <summary>The page of a parcel's weather.</summary>
public sealed class RecordModel(
    RecordReader reader, ParcelWeather weather, StationFindings findings, IAuthorizationService access) : PageModel
{
    [BindProperty(SupportsGet = true, Name = "range")]
    public string? Asked { get; set; }

    public Guid Id { get; private set; }

    public RecordInput Input { get; private set; } = null!;

    public RecordRange Range { get; private set; } = null!;

    public LocalDate Today => Input.Today;

    public IReadOnlyList<StationLine> Stations { get; private set; } = [];

    public DaySpan Days { get; private set; }

    public RecordTemperatures Temperatures { get; private set; } = null!;

    public FanChart? Fan { get; private set; }

    public HeatChart? Heat { get; private set; }

    public static ThermalTime Model => LeafOut.Default.FromMarch;

    /// <summary>Null for those who are not told of stations' readings.</summary>
    public RejectedRows? Rejected { get; private set; }

    /// <summary>
    /// Lasting steps of the stations, with the station's name; none for those who are not told of its readings.
    /// </summary>
    public IReadOnlyList<(string Station, string Found)> Steps { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid id, CancellationToken cancellation)
    {
        if (RecordRange.Find(Asked) is not { } range || await reader.ReadAsync(id, cancellation) is not { } input)
            return NotFound();
        (Id, Input, Range) = (id, input, range);
        Stations = await weather.SourcesAsync(input.Place, input.Source, cancellation);
        var series = input.Record?.Series ?? DailySeries.Empty;
        Days = range.Days(series[DailyElement.MinTemperatureC]?.First ?? Today, Today);
        Temperatures = RecordTemperatures.Of(series, Days);
        Fan = FanChart.Of(input.Signals, input.Ensemble, Today);
        Heat = HeatChart.Of(HeatChart.Seasons(series, input.Forecast, Model), Model, Today.Year);
        if ((await access.AuthorizeAsync(User, Access.Work)).Succeeded)
        {
            var found = await FindingsAsync(cancellation);
            Rejected = RejectedRows.Of(found);
            Steps = [.. found.SelectMany(
                station => station.Findings.Steps, (station, step) => (station.Name, step.Found))];
        }
        return Page();
    }

    /// <summary>A number of a table.</summary>
    public static string Number(double? value) =>
        value is { } known ? known.ToString("0", CultureInfo.InvariantCulture) : "not known";

    private async Task<List<(string Name, StationFindings.FindingsView Findings)>> FindingsAsync(
        CancellationToken cancellation)
    {
        var found = new List<(string, StationFindings.FindingsView)>();
        foreach (var (id, name) in Stations.Select(station => (station.GhcnId, station.Name)).Distinct())
        {
            if (await findings.OfAsync(id, null, cancellation) is { } view)
                found.Add((name, view));
        }
        return found;
    }
}
