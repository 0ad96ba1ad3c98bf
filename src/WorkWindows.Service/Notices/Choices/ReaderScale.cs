using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>Says what pages show in the scale of temperature that whoever reads the page has chosen.</summary>
public sealed class ReaderScale(WorkWindowsDb db, Caller caller)
{
    private TemperatureScale? _scale;

    /// <summary>The sentence with its temperatures in the reader's scale.</summary>
    public async Task<string> SayAsync(string text) => TemperatureWords.In(text, _scale ??= await ReadAsync());

    private async Task<TemperatureScale> ReadAsync() =>
        await db.NoticeSettings.AnyAsync(row => row.PersonId == caller.PersonId && row.Celsius)
            ? TemperatureScale.Celsius
            : TemperatureScale.Fahrenheit;
}
