namespace WorkWindows.Feeds.Portfolio;

/// <summary>Reads a CSV file of planned tasks; its form is described in docs/files.md.</summary>
public static class TaskFile
{
    private static readonly CsvTable Table = new(
        ["task", "parcel", "practice", "quantity", "unit", "crewSize"],
        ["deadline", "scheduledOn", "prerequisites", "crewLead"], "tasks");

    /// <param name="stream">The file.</param>
    /// <param name="knownParcels">The parcels that tasks may be on.</param>
    /// <param name="knownTasks">Tasks outside the file that may be prerequisites.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static TaskImport Read(Stream stream, IReadOnlySet<string> knownParcels, IReadOnlySet<string> knownTasks)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(knownParcels);
        ArgumentNullException.ThrowIfNull(knownTasks);
        var faults = new FaultCollector();
        var text = Utf8Text.Read(stream, faults);
        if (faults.Any)
            return new([], faults.ToReport());
        var rows = Table.Read(text, faults, TaskReader.Read);
        TaskChecks.ReportRepeatedKeys(rows, faults);
        TaskChecks.ReportUnknownParcels(rows, knownParcels, faults);
        TaskChecks.ReportUnknownPrerequisites(rows, knownTasks, faults);
        TaskChecks.ReportCycles(rows, faults);
        return new([.. rows.Select(row => row.Row).OfType<TaskRow>()], faults.ToReport());
    }
}
