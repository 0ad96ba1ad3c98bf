using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

/// <summary>What past years say of a task, in sentences.</summary>
public static class ChanceWords
{
    private const int StepPercent = 5;

    /// <summary>The sentences of a season's page, or why there are none.</summary>
    public static IReadOnlyList<string> Of(SeasonChances chances) => !chances.AreTold
        ? [TooFew(chances.UsableYears)]
        :
        [
            .. new[]
            {
                Opens(chances), Closes(chances), WorkableDays(chances), Likeliest(chances), LeafOut(chances),
                Untold(chances),
            }.OfType<string>(),
        ];

    /// <summary>The years counted, such as 30 past years (1996–2025).</summary>
    public static string Years(SeasonChances chances) =>
        $"{DayWords.Count(chances.Years.Count, "past year", "past years")} ({chances.Years.Min()}–{chances.Years.Max()})";

    /// <summary>A day's chance, as in 'Thu 5 Mar: about 70 %, 21 of 30 years'.</summary>
    public static string Of(LocalDate day, DayChance chance, LocalDate today)
    {
        var known = chance.Members - chance.Unknown;
        var told = chance.Share switch
        {
            null => "chance not known",
            0 => "closed in every year",
            1 => "workable in every year",
            { } share => $"about {Percent(share)} %",
        };
        var years = chance.Share is null or 0 or 1 ? "" : $", {chance.Workable} of {known} years";
        var doubt = chance.Unknown == 0 ? "" : $", not known in {chance.Unknown} of {chance.Members} years";
        return $"{DayWords.Of(day, today)}: {told}{years}{doubt}";
    }

    /// <summary>A chance between none and certain, in steps of five per cent.</summary>
    public static int Percent(double share) =>
        Math.Clamp((int)Math.Round(share * 100 / StepPercent) * StepPercent, StepPercent, 100 - StepPercent);

    private static string TooFew(int years) => years == 0
        ? "No chances are told: no past year has the temperatures of the days to come."
        : $"No chances are told: it takes {Ensemble.MinYears} past years with the temperatures of the days to come, "
            + $"and the record has {years}.";

    private static string? Opens(SeasonChances chances)
    {
        var (opens, today, last) = (chances.Opens, chances.Days.First, chances.Days.Last);
        if (!opens.IsTold)
            return null;
        if (opens is not { P10: { } early, P50: { } half, P90: { } late })
            return $"It opens in none of them by {Day(last, today)}.";
        if (opens.Happens == opens.Known && late == today)
            return "In all of them it may be worked today.";
        var span = early == late
            ? $"on {Day(early, today)}"
            : $"between {Day(early, today)} and {Day(late, today)} in eight years of ten, in half of them by "
                + Day(half, today);
        return opens.Happens == opens.Known
            ? $"It opens {span}."
            : $"It opens by {Day(last, today)} in {opens.Happens} of {opens.Known} years: {span}.";
    }

    private static string? Closes(SeasonChances chances)
    {
        var (closes, today, last) = (chances.Closes, chances.Days.First, chances.Days.Last);
        // Of those that open, the years that know how long.
        var opened = chances.Opens.Happens - (closes.Unknown - chances.Opens.Unknown);
        if (!closes.IsTold || opened == 0)
            return null;
        var always = opened == closes.Known;
        if (closes is not { P10: { } early, P50: { } half, P90: { } late })
        {
            return always
                ? $"It stays open beyond {Day(last, today)} in every year, but for breaks of less than two weeks."
                : $"Once open, it stays so beyond {Day(last, today)}, but for breaks of less than two weeks.";
        }
        var span = early == late
            ? $"after {Day(early, today)}"
            : $"after a day between {Day(early, today)} and {Day(late, today)} in eight years of ten, in half of them "
                + $"after {Day(half, today)}";
        return closes.Happens == opened
            ? $"It closes, for two weeks or more, {span}."
            : $"It closes, for two weeks or more, in {closes.Happens} of {opened} "
                + $"{(always ? "years" : "years in which it opens")}: {span}. "
                + $"In the others it stays open beyond {Day(last, today)}.";
    }

    private static string? WorkableDays(SeasonChances chances)
    {
        if (chances.WorkableDays is not { } left || chances.Opens.Happens == 0)
            return null;
        var days = (int)Math.Round(left);
        var until = chances.Closes.Happens == 0
            ? $"By {Day(chances.Days.Last, chances.Days.First)}"
            : "Until it closes";
        return days == 0
            ? $"{until} less than one workable day is left, in the mean."
            : $"{until} {DayWords.Count(days, "workable day is", "workable days are")} left, in the mean of the years.";
    }

    /// <summary>
    /// The best of the days that some years make workable and some do not: until it closes, or after that where all of
    /// those agree. Null when there is none.
    /// </summary>
    private static string? Likeliest(SeasonChances chances)
    {
        var today = chances.Days.First;
        var closed = chances.Closes.P90 ?? chances.Days.Last;
        var divided =
            Enumerable.Range(0, chances.Each.Count).Where(day => chances.Each[day].Share is > 0 and < 1).ToList();
        if (divided.Count == 0)
            return null;
        var soon = divided.FindAll(day => chances.Days[day] <= closed);
        var best = (soon.Count > 0 ? soon : divided).MaxBy(day => chances.Each[day].Share);
        return $"Of the days on which the years differ, {Day(chances.Days[best], today)} is the likeliest: "
            + $"about {Percent(chances.Each[best].Share!.Value)} %.";
    }

    private static string? LeafOut(SeasonChances chances)
    {
        var today = chances.Days.First;
        return chances.LeafOut is not { P10: { } early, P50: { } half, P90: { } late } ? null
            : early == late ? $"Leaf-out comes on {Day(early, today)}."
            : $"Leaf-out comes between {Day(early, today)} and {Day(late, today)} in eight years of ten, in half of them by "
                + $"{Day(half, today)}; how far the model itself is off comes on top.";
    }

    private static string? Untold(SeasonChances chances)
    {
        if (chances.FirstUntold is not { } first)
            return null;
        var today = chances.Days.First;
        var count = chances.Each.Count(chance => chance.Share is null);
        return $"On {count} of {DayWords.Count(chances.Each.Count, "day", "days")}, first {(first == today ? "" : "on ")}"
            + $"{Day(first, today)}, no chance is told: too many of the years do not know {chances.Missing ?? "the day"}.";
    }

    private static string Day(LocalDate day, LocalDate today) => day == today ? "today" : DayWords.Of(day, today);
}
