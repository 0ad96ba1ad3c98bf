using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Parcels;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>What the checks found in a station's record.</summary>
public sealed class StationFindings(WorkWindowsDb db, WeatherRecords weather, ParcelRecords records, IClock clock)
{
    /// <param name="GhcnId">The station.</param>
    /// <param name="ComparedWith">The stations around that it was compared with.</param>
    /// <param name="Used">How many of its readings are used.</param>
    /// <param name="NotUsed">How many are not, of all days.</param>
    /// <param name="Rejected">Those of the days asked for that are not used.</param>
    /// <param name="Shifts">
    /// Years whose readings stand on the wrong day, and are put right in the records of parcels.
    /// </param>
    /// <param name="Steps">
    /// When it became lastingly warmer or colder than the stations around; its readings stay in use.
    /// </param>
    public sealed record FindingsView(
        string GhcnId, IReadOnlyList<string> ComparedWith, int Used, int NotUsed, IReadOnlyList<RejectedView> Rejected,
        IReadOnlyList<ShiftView> Shifts, IReadOnlyList<StepView> Steps);

    /// <param name="Date">The day that the source books it to.</param>
    /// <param name="Element">What was measured, with its unit.</param>
    /// <param name="Value">The value in the unit of the element.</param>
    /// <param name="Reason">Why it is not used.</param>
    /// <param name="Because">The same in plain words.</param>
    public sealed record RejectedView(
        LocalDate Date, DailyElement Element, double Value, RejectionReason Reason, string Because);

    /// <param name="Element">Which temperature.</param>
    /// <param name="Year">The year.</param>
    /// <param name="DaysLate">How many days late its readings stand; negative: early.</param>
    public sealed record ShiftView(DailyElement Element, int Year, int DaysLate);

    /// <summary>A lasting step.</summary>
    /// <param name="Element">Which temperature.</param>
    /// <param name="From">
    /// The first day of the month from which on the new level holds, give or take half a year.
    /// </param>
    /// <param name="SizeC">
    /// How much warmer it is from then on, against the stations around, °C; negative: colder.
    /// </param>
    /// <param name="Found">The same in plain words.</param>
    /// <param name="Meaning">What it means.</param>
    public sealed record StepView(DailyElement Element, LocalDate From, double SizeC, string Found, string Meaning);

    /// <param name="ghcnId">The station.</param>
    /// <param name="days">The days whose rejected readings are listed; null for all.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>Null when there is no such station.</returns>
    public async Task<FindingsView?> OfAsync(string ghcnId, DaySpan? days, CancellationToken cancellation)
    {
        var all = await db.Stations.AsNoTracking().ToListAsync(cancellation);
        if (all.SingleOrDefault(row => row.GhcnId == ghcnId) is not { } station)
            return null;
        var around = new StationNeighbours(all).Of(station, false, RecordPlace.Of(station.Described()));
        var now = clock.GetCurrentInstant();
        var alone = await weather.CheckedAsync(station, now, cancellation);
        var group = around.Count > 1 ? await records.GroupAsync(around, now, cancellation) : null;
        var rejected = alone.Rejected
            .Concat(group?.Rejected.Where(said => said.StationId == ghcnId).Select(said => said.Reading) ?? [])
            .ToList();
        var used = Enum.GetValues<DailyElement>()
            .Sum(element => alone.Usable[element]?.Values.Count(value => !double.IsNaN(value)) ?? 0);
        return new(
            ghcnId, [.. around.Skip(1).Select(other => other.GhcnId)],
            used - (rejected.Count - alone.Rejected.Length), rejected.Count,
            [.. rejected.Where(reading => days?.Contains(reading.Date) ?? true)
                .OrderBy(reading => reading.Date).ThenBy(reading => reading.Element)
                .Select(reading => new RejectedView(
                    reading.Date, reading.Element, reading.Value, reading.Reason,
                    RejectedReading.WordsOf(reading.Reason)))],
            [.. (group?.Shifts ?? []).Where(shift => shift.StationId == ghcnId)
                .Select(shift => new ShiftView(shift.Element, shift.Year, shift.DaysLate))],
            [.. (group?.Steps ?? []).Where(step => step.StationId == ghcnId)
                .OrderBy(step => step.From).ThenBy(step => step.Element)
                .Select(step => new StepView(
                    step.Element, step.From, Math.Round(step.SizeC, 1), StepWords.Of(step), StepWords.Meaning))]);
    }
}
