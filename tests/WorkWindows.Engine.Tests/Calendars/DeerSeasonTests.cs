using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Calendars;

/// <summary>Sources of the published seasons: shared reference, wildlife and calendars, section 4.</summary>
public sealed class DeerSeasonTests
{
    [Theory]
    // Published seasons: agency notices and news reprints of them. A year with one end given was published so.
    [InlineData("WI-gun", 2012, null, "2012-11-25")]
    [InlineData("WI-gun", 2023, "2023-11-18", "2023-11-26")]
    [InlineData("WI-gun", 2024, "2024-11-23", "2024-12-01")]
    [InlineData("WI-mz", 2012, "2012-11-26", null)]
    [InlineData("WI-mz", 2023, "2023-11-27", "2023-12-06")]
    [InlineData("WI-antl", 2012, "2012-12-06", null)]
    [InlineData("WI-antl", 2023, "2023-12-07", "2023-12-10")]
    [InlineData("WI-bow", 2021, "2021-09-18", "2022-01-09")]
    [InlineData("WI-bow", 2023, "2023-09-16", "2024-01-07")]
    [InlineData("WI-holiday", 2023, "2023-12-24", "2024-01-01")]
    [InlineData("MI-gun", 2025, "2025-11-15", "2025-11-30")]
    [InlineData("MI-mz", 2020, "2020-12-04", "2020-12-13")]
    [InlineData("MI-mz", 2025, "2025-12-05", "2025-12-14")]
    [InlineData("MI-late", 2020, "2020-12-14", "2021-01-01")]
    [InlineData("MI-late", 2025, "2025-12-15", "2026-01-01")]
    [InlineData("MI-liberty", 2025, "2025-09-13", "2025-09-14")]
    [InlineData("MN-gun", 2020, "2020-11-07", null)]
    [InlineData("MN-gun", 2021, "2021-11-06", null)]
    [InlineData("MN-gun", 2025, "2025-11-08", null)]
    [InlineData("MN-mz", 2020, "2020-11-28", "2020-12-13")]
    [InlineData("MN-mz", 2021, "2021-11-27", "2021-12-12")]
    [InlineData("MN-bow", 2020, "2020-09-19", "2020-12-31")]
    [InlineData("MN-bow", 2021, "2021-09-18", "2021-12-31")]
    [InlineData("IA-gun1", 2017, "2017-12-02", "2017-12-06")]
    [InlineData("IL-gun1", 2016, "2016-11-18", "2016-11-20")]
    [InlineData("IL-gun2", 2016, "2016-12-01", "2016-12-04")]
    [InlineData("IL-mz", 2016, "2016-12-09", "2016-12-11")]
    [InlineData("IL-bow", 2016, null, "2017-01-15")]
    [InlineData("OH-gun", 2017, "2017-11-27", null)]
    [InlineData("OH-gun", 2021, "2021-11-29", "2021-12-05")]
    [InlineData("OH-gun", 2022, "2022-11-28", null)]
    [InlineData("OH-gun", 2023, "2023-11-27", null)]
    [InlineData("OH-gun", 2024, "2024-12-02", "2024-12-08")]
    [InlineData("OH-bonus", 2017, "2017-12-16", null)]
    [InlineData("OH-bonus", 2021, "2021-12-18", null)]
    [InlineData("OH-bonus", 2022, "2022-12-17", null)]
    [InlineData("OH-bonus", 2023, "2023-12-16", null)]
    [InlineData("OH-bonus", 2024, "2024-12-21", null)]
    [InlineData("OH-youth", 2017, "2017-11-18", null)]
    [InlineData("OH-youth", 2021, "2021-11-20", null)]
    [InlineData("OH-youth", 2022, "2022-11-19", null)]
    [InlineData("OH-youth", 2023, "2023-11-18", null)]
    [InlineData("OH-youth", 2024, "2024-11-16", null)]
    [InlineData("OH-mz", 2018, "2018-01-06", null)]
    [InlineData("OH-mz", 2023, "2023-01-07", null)]
    [InlineData("OH-mz", 2024, "2024-01-06", null)]
    [InlineData("OH-mz", 2025, "2025-01-04", null)]
    [InlineData("OH-bow", 2022, "2022-09-24", "2023-02-05")]
    [InlineData("OH-bow", 2023, "2023-09-30", "2024-02-04")]
    [InlineData("OH-bow", 2024, "2024-09-28", "2025-02-02")]
    [InlineData("PA-gun", 2019, "2019-11-30", "2019-12-14")]
    [InlineData("PA-gun", 2021, "2021-11-27", "2021-12-11")]
    [InlineData("PA-gun", 2023, "2023-11-25", "2023-12-09")]
    [InlineData("PA-gun", 2024, "2024-11-30", "2024-12-14")]
    [InlineData("PA-gun closed", 2024, "2024-12-08", "2024-12-08")]
    [InlineData("PA-gun", 2025, "2025-11-29", "2025-12-13")]
    [InlineData("NY-south", 2015, "2015-11-21", "2015-12-13")]
    [InlineData("NY-south", 2017, "2017-11-18", "2017-12-10")]
    [InlineData("NY-south", 2022, null, "2022-12-11")]
    [InlineData("NY-south", 2023, "2023-11-18", "2023-12-10")]
    [InlineData("NY-south late", 2017, "2017-12-11", "2017-12-19")]
    [InlineData("NY-south late", 2023, "2023-12-11", "2023-12-19")]
    [InlineData("NY-north", 2017, "2017-10-21", "2017-12-03")]
    [InlineData("IN-gun", 2008, "2008-11-15", null)]
    [InlineData("IN-gun", 2021, null, "2021-11-28")]
    [InlineData("IN-mz", 2021, "2021-12-04", "2021-12-19")]
    [InlineData("IN-bow", 2011, "2011-10-01", "2012-01-01")]
    [InlineData("IN-bow", 2021, null, "2022-01-02")]
    [InlineData("MO-Nov", 2019, "2019-11-16", "2019-11-26")]
    [InlineData("MO-Nov", 2021, "2021-11-13", "2021-11-23")]
    [InlineData("MO-Nov", 2022, "2022-11-12", "2022-11-22")]
    [InlineData("MO-Nov", 2023, "2023-11-11", "2023-11-21")]
    [InlineData("MO-youth", 2019, "2019-11-02", null)]
    [InlineData("MO-youth", 2022, "2022-10-29", null)]
    [InlineData("MO-youth", 2023, "2023-10-28", null)]
    [InlineData("MO-youth late", 2019, "2019-11-29", null)]
    [InlineData("MO-youth late", 2022, "2022-11-25", null)]
    [InlineData("MO-youth late", 2023, "2023-11-24", null)]
    [InlineData("MO-late", 2022, "2022-12-03", "2022-12-11")]
    [InlineData("MO-late", 2023, "2023-12-02", "2023-12-10")]
    [InlineData("MO-alt", 2019, "2019-12-28", "2020-01-07")]
    [InlineData("MO-alt", 2022, "2022-12-24", "2023-01-03")]
    [InlineData("MO-alt", 2023, "2023-12-23", "2024-01-02")]
    // The earliest Thanksgiving, 22 November, and an 11 November that is a Saturday.
    [InlineData("MO-Nov", 2012, "2012-11-10", null)]
    [InlineData("MO-Nov", 2018, "2018-11-10", null)]
    [InlineData("IN-gun", 2017, "2017-11-18", null)]
    public void Occurrence_MatchesPublishedSeason(string season, int year, string? from, string? to) =>
        AssertSeason(season, year, from, to);

    [Theory]
    // Computed vectors of the reference for 2024 to 2027, from and to of each year.
    [InlineData("WI-gun", "11-23 12-01", "11-22 11-30", "11-21 11-29", "11-20 11-28")]
    [InlineData("WI-bow", "09-14 01-05", "09-13 01-04", "09-12 01-03", "09-18 01-09")]
    [InlineData("MI-mz", "12-06 12-15", "12-05 12-14", "12-04 12-13", "12-03 12-12")]
    [InlineData("MN-gun", "11-09 11-09", "11-08 11-08", "11-07 11-07", "11-06 11-06")]
    [InlineData("MN-bow", "09-14 12-31", "09-13 12-31", "09-19 12-31", "09-18 12-31")]
    [InlineData("IA-gun1", "12-07 12-11", "12-06 12-10", "12-05 12-09", "12-04 12-08")]
    [InlineData("IL-gun1", "11-22 11-24", "11-21 11-23", "11-20 11-22", "11-19 11-21")]
    [InlineData("IL-gun2", "12-05 12-08", "12-04 12-07", "12-03 12-06", "12-02 12-05")]
    [InlineData("IL-bow", "10-01 01-19", "10-01 01-18", "10-01 01-17", "10-01 01-16")]
    [InlineData("OH-gun", "12-02 12-08", "12-01 12-07", "11-30 12-06", "11-29 12-05")]
    [InlineData("OH-bow", "09-28 02-02", "09-27 02-01", "09-26 02-07", "09-25 02-06")]
    [InlineData("PA-gun", "11-30 12-14", "11-29 12-13", "11-28 12-12", "11-27 12-11")]
    [InlineData("PA-gun closed", "12-08 12-08", "12-07 12-07", "12-06 12-06", "12-05 12-05")]
    [InlineData("NY-south", "11-16 12-08", "11-15 12-07", "11-21 12-13", "11-20 12-12")]
    [InlineData("NY-north", "10-19 12-01", "10-18 11-30", "10-24 12-06", "10-23 12-05")]
    [InlineData("IN-gun", "11-16 12-01", "11-15 11-30", "11-14 11-29", "11-13 11-28")]
    [InlineData("MO-Nov", "11-16 11-26", "11-15 11-25", "11-14 11-24", "11-13 11-23")]
    public void Occurrence_MatchesComputedSeasons(string season, params string[] years)
    {
        for (var i = 0; i < years.Length; i++)
        {
            var (year, ends) = (2024 + i, years[i].Split(' '));
            var overNewYear = string.CompareOrdinal(ends[1], ends[0]) < 0;
            AssertSeason(season, year, $"{year}-{ends[0]}", $"{(overNewYear ? year + 1 : year)}-{ends[1]}");
        }
    }

    private static void AssertSeason(string season, int year, string? from, string? to)
    {
        var range = DeerSeasons.Of(season);
        var span = DaySpan.Between(new(year, 1, 1), new(year + 1, 6, 30));
        var signals = SignalSet.Of("anywhere", span, [], []);
        var first = range.From.Resolve(year)!.Value;
        var occurrence = CalendarDays.Occurrence(range, signals, first);
        var (run, end) = CalendarDays.Days(range, signals).Holds.Runs().First(r => r.First == span.IndexOf(first));

        Assert.Equal(Date(from) ?? occurrence.From, occurrence.From);
        Assert.Equal(Date(to) ?? occurrence.To, occurrence.To);
        Assert.Equal((occurrence.From, occurrence.To, Basis.Calendar), (span[run], span[end], occurrence.Basis));
    }

    private static LocalDate? Date(string? text) =>
        text is null ? null : LocalDatePattern.Iso.Parse(text).Value;
}
