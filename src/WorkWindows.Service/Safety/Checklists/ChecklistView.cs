using System.Text.Json;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>A task's checklist for a day as the API shows it.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Date">The day in the property's zone.</param>
/// <param name="Version">The hash of what is shown: a signature names it.</param>
/// <param name="KnownAt">When it was put together.</param>
/// <param name="State">What may be done on the day.</param>
/// <param name="Release">Whether a crew may begin.</param>
/// <param name="Figures">The day's weather and light, a line each.</param>
/// <param name="Items">The lines, in order.</param>
/// <param name="Cautions">What the list does not know.</param>
public sealed record ChecklistView(
    Guid TaskId, LocalDate Date, string Version, Instant KnownAt, DayState State, ReleaseView Release,
    IReadOnlyList<string> Figures, IReadOnlyList<ChecklistItemView> Items, IReadOnlyList<string> Cautions)
{
    public static ChecklistView Of(DayChecklist list) => new(
        list.Task.Id, list.Day, list.Checklist.Version, list.KnownAt, list.Explanation.State,
        ReleaseView.Of(list.Release), list.Figures, [.. list.Checklist.Items.Select(ChecklistItemView.Of)],
        Engine.Safety.Cautions.Usual);
}

/// <summary>Whether a crew may begin.</summary>
/// <param name="State">Whether it may.</param>
/// <param name="Statement">The same in sentences.</param>
public sealed record ReleaseView(ReleaseState State, string Statement)
{
    public static ReleaseView Of(Release release) => new(release.State, release.Statement);
}

/// <summary>A line of a checklist.</summary>
/// <param name="Id">Its key.</param>
/// <param name="Text">All that it says; a signature repeats it.</param>
/// <param name="Kind">Where it stands.</param>
/// <param name="Source">Document and paragraph.</param>
/// <param name="Authority">How binding it is.</param>
/// <param name="FromMemory">Its wording has not been checked against the document.</param>
public sealed record ChecklistItemView(
    string Id, string Text, SafetyItemKind Kind, string Source, Authority Authority, bool FromMemory)
{
    public static ChecklistItemView Of(SafetyItem item) =>
        new(item.Id, item.Statement, item.Kind, item.Source.ToString(), item.Authority, item.FromMemory);
}

/// <summary>A signature as the API, the pages and the audit show it.</summary>
/// <param name="Id">The signature.</param>
/// <param name="Key">Made where it was signed.</param>
/// <param name="TaskId">The task.</param>
/// <param name="Date">The day.</param>
/// <param name="Version">The version of the list.</param>
/// <param name="PersonId">Who signed.</param>
/// <param name="Person">The name that the person had then.</param>
/// <param name="Name">The name as it was typed.</param>
/// <param name="InsteadBecause">Why a consultant released it in place of the crew lead; null otherwise.</param>
/// <param name="SignedAt">By the phone's clock.</param>
/// <param name="ReceivedAt">By the server's.</param>
/// <param name="Checklist">The list as it was shown.</param>
public sealed record SignatureView(
    Guid Id, Guid Key, Guid TaskId, LocalDate Date, string Version, Guid PersonId, string Person, string Name,
    string? InsteadBecause, Instant SignedAt, Instant ReceivedAt, JsonElement Checklist)
{
    public static SignatureView Of(ChecklistSignature row) => new(
        row.Id, row.Key, row.TaskId, row.Day, row.Version, row.PersonId, row.Person, row.TypedName,
        row.InsteadBecause, row.SignedAt, row.ReceivedAt, JsonSerializer.Deserialize<JsonElement>(row.Content));
}
