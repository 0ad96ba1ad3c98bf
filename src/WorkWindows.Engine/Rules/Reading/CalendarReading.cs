using System.Globalization;
using WorkWindows.Engine.Calendars;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads the dates and ranges of the calendar.</summary>
internal static class CalendarReading
{
    private const string DateForm = "a month and day such as 08-01, or a mapping with nth, nearest, first or event";

    // A leap year, so that 02-29 is accepted.
    private const int AnyLeapYear = 2024;

    public const string PlusDays = "plus-days";
    public const int MostPlusDays = 366;
    public const int MostNth = 5;

    /// <summary>The kinds of date by their key, with the keys that stand beside it.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Kinds = new Dictionary<string, string[]>
    {
        ["nth"] = ["weekday", "month"],
        ["nearest"] = ["to"],
        ["first"] = ["on-or-after"],
        ["event"] = ["not-before", "not-after"],
    };

    private static readonly string[] DateKeys = [.. Kinds.Keys, .. Kinds.Values.SelectMany(keys => keys), PlusDays];

    /// <param name="entry">The range.</param>
    /// <param name="allowEvents">Whether an event of nature may move an end.</param>
    public static CalendarRange? Range(Entry entry, bool allowEvents = true)
    {
        var range = Ends(entry);
        if (range is { From: EventDate } or { To: EventDate } && !allowEvents)
            entry.Refuse("dates of the calendar: no event may move this range");
        else if (range is not null && !CalendarDays.EverHolds(range))
            entry.Refuse("a range that has days in some year");
        else
            return range;
        return null;
    }

    private static CalendarRange? Ends(Entry entry)
    {
        if (entry.AsMapping("from", "to", "on") is not { } mapping)
            return null;
        if (mapping["on"] is { } on)
        {
            if (mapping.Has("from") || mapping.Has("to"))
                entry.Refuse("either on, or from and to");
            return Date(on) is { } day ? new(day, day) : null;
        }
        var from = mapping.Required("from", DateForm) is { } first ? Date(first) : null;
        var to = mapping.Required("to", DateForm) is { } last ? Date(last) : null;
        return from is null || to is null ? null : new(from, to);
    }

    private static YearlyDate? Date(Entry entry)
    {
        if (entry.Text is not null)
            return MonthDay(entry);
        if (entry.AsMapping(DateKeys) is not { } mapping)
            return null;
        if (Kinds.Keys.Where(mapping.Has).ToArray() is not [var kind])
        {
            entry.Refuse(DateForm);
            return null;
        }
        string[] fitting = [kind, .. Kinds[kind], PlusDays];
        if (DateKeys.Except(fitting).FirstOrDefault(mapping.Has) is { } stray)
            mapping[stray]!.Refuse($"nothing: this key does not go with {kind}");
        YearlyDate? date = kind switch
        {
            "nth" => NthOf(mapping),
            "nearest" => Nearest(mapping),
            "first" => OnOrAfter(mapping),
            _ => Event(mapping),
        };
        var plus = mapping[PlusDays]?.Integer(-MostPlusDays, MostPlusDays) ?? 0;
        return date?.Plus(plus);
    }

    public static FixedDate? MonthDay(Entry entry)
    {
        if (DateTime.TryParseExact($"{AnyLeapYear}-{entry.Text}", "yyyy-MM-dd", CultureInfo.InvariantCulture,
                DateTimeStyles.None, out var date))
        {
            return new(date.Month, date.Day);
        }
        entry.Refuse("a month and day such as 08-01");
        return null;
    }

    private static NthWeekday? NthOf(Mapping mapping)
    {
        var nth = mapping["nth"]!.Integer(-MostNth, MostNth);
        if (nth == 0)
            mapping["nth"]!.Refuse("1 to 5 from the start of the month, -1 to -5 from its end");
        var weekday = mapping.Required("weekday", "a weekday")?.OneOf(Words.Weekdays);
        var month = mapping.Required("month", "1 to 12")?.Integer(1, 12);
        return nth is null or 0 || weekday is null || month is null ? null : new(nth.Value, weekday.Value, month.Value);
    }

    private static NearestWeekday? Nearest(Mapping mapping)
    {
        var weekday = mapping["nearest"]!.OneOf(Words.Weekdays);
        var day = mapping.Required("to", "a month and day such as 11-06") is { } to ? MonthDay(to) : null;
        return weekday is null || day is null ? null : new(weekday.Value, day.Month, day.Day);
    }

    private static WeekdayOnOrAfter? OnOrAfter(Mapping mapping)
    {
        var weekday = mapping["first"]!.OneOf(Words.Weekdays);
        var day = mapping.Required("on-or-after", "a month and day such as 11-12") is { } from ? MonthDay(from) : null;
        return weekday is null || day is null ? null : new(weekday.Value, day.Month, day.Day);
    }

    private static EventDate? Event(Mapping mapping)
    {
        var kind = mapping["event"]!.OneOf(Words.Events);
        var notBefore = mapping.Required("not-before", "the earliest month and day it can fall on") is { } early
            ? MonthDay(early) : null;
        var notAfter = mapping.Required("not-after", "the latest month and day it can fall on") is { } late
            ? MonthDay(late) : null;
        if (notBefore is not null && notAfter is not null
            && (notAfter.Month, notAfter.Day).CompareTo((notBefore.Month, notBefore.Day)) < 0)
        {
            mapping["not-after"]!.Refuse("a date that is not before not-before, in the same year");
        }
        return kind is null || notBefore is null || notAfter is null ? null : new(kind.Value, notBefore, notAfter);
    }
}
