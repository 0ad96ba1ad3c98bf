using System.Collections.Immutable;
using System.Text;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

/// <summary>Reads task files on the parcels north and south, beside a task known as felling.</summary>
internal static class TaskText
{
    public const string Header =
        "task,parcel,practice,quantity,unit,crewSize,deadline,scheduledOn,prerequisites,crewLead";

    public static TaskImport Read(params IEnumerable<string> lines) =>
        ReadText(string.Join('\n', lines.Prepend(Header)));

    public static TaskImport ReadText(string text) => TaskFile.Read(
        new MemoryStream(Encoding.UTF8.GetBytes(text)),
        ImmutableHashSet.Create("north", "south"),
        ImmutableHashSet.Create("felling"));
}
