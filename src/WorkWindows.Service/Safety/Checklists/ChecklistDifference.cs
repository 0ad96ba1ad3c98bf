using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>One line that a list says otherwise than it was shown.</summary>
/// <param name="Id">The line.</param>
/// <param name="Was">What was shown; null for a new line.</param>
/// <param name="Now">What it says now; null for a line that is gone.</param>
public sealed record ChecklistChange(string Id, string? Was, string? Now)
{
    public string Words => (Was, Now) switch
    {
        (null, var now) => $"New: {now}",
        (var was, null) => $"Gone: {was}",
        var (was, now) => $"Changed: {now} Before: {was}",
    };
}

/// <summary>Compares what was shown with what a list says now.</summary>
public static class ChecklistDifference
{
    /// <param name="shown">The lines as they were shown, those without an id or a text left out.</param>
    /// <param name="now">The list as it stands.</param>
    /// <returns>In the order of the list, those that are gone last; empty when only sources or order differ.</returns>
    public static IReadOnlyList<ChecklistChange> Of(IEnumerable<AcknowledgedItem> shown, SafetyChecklist now)
    {
        var before = shown.Where(item => item is { Id: not null, Text: not null }).DistinctBy(item => item.Id)
            .ToDictionary(item => item.Id!, item => item.Text!);
        var gone = before.Keys.Except(now.Items.Select(item => item.Id)).Order(StringComparer.Ordinal);
        return
        [
            .. now.Items.Where(item => before.GetValueOrDefault(item.Id) != item.Statement)
                .Select(item => new ChecklistChange(item.Id, before.GetValueOrDefault(item.Id), item.Statement)),
            .. gone.Select(id => new ChecklistChange(id, before[id], null)),
        ];
    }
}
