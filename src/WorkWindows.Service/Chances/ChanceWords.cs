using WorkWindows.Engine.Chances;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

/// <summary>What past years say of a task, in sentences.</summary>
internal static class ChanceWords
{
    private const int StepPercent = 5;

    /// <summary>The years counted, such as 30 past years (1996–2025).</summary>
    public static string Years(TaskChances chances) =>
        $"{chances.Years.Length} past years ({chances.Years.Min()}–{chances.Years.Max()})";

    public static string Opens(TaskChances chances) => Of(chances.Opens, "opens on", "opens between", "by");

    /// <summary>Null when it opens in no year.</summary>
    public static string? Closes(TaskChances chances) => chances.Opens.Happens == 0
        ? null
        : Of(chances.Closes, "closes after", "closes after some day between", "after");

    /// <summary>Null when it opens in no year.</summary>
    public static string? WorkableDays(TaskChances chances) => chances.Opens.Happens == 0
        ? null
        : $"Until then {DayWords.Count((int)Math.Round(chances.WorkableDays), "day", "days")} can be worked, in the mean.";

    /// <summary>The chance of a day, in steps of five per cent.</summary>
    public static string Of(DayChance chance) => chance.Share switch
    {
        null => "chance not known",
        0 => "in no year",
        1 => "in every year",
        { } share => $"about {Math.Clamp(Math.Round(share * 100 / StepPercent) * StepPercent, StepPercent, 100 - StepPercent):0} %",
    };

    private static string Of(DateSpread spread, string on, string between, string middle)
    {
        var verb = on[..on.IndexOf(' ', StringComparison.Ordinal)];
        if (spread is not { P10: { } early, P50: { } half, P90: { } late })
            return $"It {verb} in none of them within the coming year.";
        var rest = spread.Happens == spread.Members
            ? ""
            : $"; in {spread.Members - spread.Happens} of {spread.Members} years it does not, within the coming year";
        return early == late
            ? $"It {on} {DayWords.WithYear(early)}{rest}."
            : $"It {between} {DayWords.WithYear(early)} and {DayWords.WithYear(late)} in eight years of ten, "
                + $"in half of them {middle} {DayWords.WithYear(half)}{rest}.";
    }
}
