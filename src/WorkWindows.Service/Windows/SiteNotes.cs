using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Windows;

/// <summary>The exceptions and readings that bear on a task, as its page lists them.</summary>
public sealed class SiteNotes(WorkWindowsDb db)
{
    /// <param name="Exceptions">Those in force today or later, the one that expires first first.</param>
    /// <param name="Readings">Those that count today or later, the latest first.</param>
    public sealed record Notes(IReadOnlyList<ExceptionLine> Exceptions, IReadOnlyList<ReadingLine> Readings);

    /// <summary>An exception; the rule by its title, or by its id where no pack has it any more.</summary>
    public sealed record ExceptionLine(
        Guid Id, string Rule, LocalDate First, LocalDate Last, string By, string Reason);

    public sealed record ReadingLine(
        string What, string Value, LocalDate SeenOn, LocalDate Until, string By, string? Note);

    /// <param name="task">The task.</param>
    /// <param name="packs">The packs that count there, for the titles of rules.</param>
    /// <param name="today">The day it is there.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Notes> ReadAsync(
        TaskSummary task, IEnumerable<RulePack> packs, LocalDate today, CancellationToken cancellation)
    {
        var titles = packs.SelectMany(pack => pack.Rules)
            .DistinctBy(rule => rule.Id).ToDictionary(rule => rule.Id, rule => rule.Title);
        var exceptions = await db.RuleOverrides.AsNoTracking().Include(row => row.MadeBy)
            .Where(row => row.PropertyId == task.PropertyId && row.WithdrawnAt == null && row.LastDay >= today
                && (row.ParcelId == null || row.ParcelId == task.ParcelId)
                && (row.TaskId == null || row.TaskId == task.Id))
            .OrderBy(row => row.LastDay).ThenBy(row => row.MadeAt).ToListAsync(cancellation);
        var readings = await db.SiteReadings.AsNoTracking().Include(row => row.RecordedBy)
            .Where(row => row.PropertyId == task.PropertyId && row.Until >= today)
            .OrderByDescending(row => row.SeenOn).ThenByDescending(row => row.RecordedAt).ToListAsync(cancellation);
        return new(
            exceptions.ConvertAll(row => new ExceptionLine(
                row.Id, titles.GetValueOrDefault(row.RuleId, row.RuleId), row.FirstDay, row.LastDay,
                row.MadeBy.DisplayName, row.Reason)),
            readings.ConvertAll(row => new ReadingLine(
                Wording.Of(row.Signal), row.Given, row.SeenOn, row.Until, row.RecordedBy.DisplayName, row.Note)));
    }
}
