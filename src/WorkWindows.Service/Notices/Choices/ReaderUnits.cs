using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>Says what pages show in the units that whoever reads the page has chosen.</summary>
public sealed class ReaderUnits(WorkWindowsDb db, Caller caller)
{
    private PersonUnits? chosen;

    /// <summary>The sentence in the reader's units.</summary>
    public async Task<string> SayAsync(string text) => (await ReadAsync()).In(text);

    public async Task<PersonUnits> ReadAsync() => chosen ??= PersonUnits.Of(caller.PersonId is { } person
        ? await db.NoticeSettings.AsNoTracking().SingleOrDefaultAsync(row => row.PersonId == person)
        : null);
}
