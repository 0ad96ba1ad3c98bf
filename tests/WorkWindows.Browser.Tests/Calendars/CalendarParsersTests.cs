using System.Text.Json;
using Microsoft.Playwright;
using Shouldly;
using WorkWindows.Browser.Tests.Site;

namespace WorkWindows.Browser.Tests.Calendars;

/// <summary>
/// The feed as two parsers read it that know nothing of the library that wrote it nor of each other: ical.js 2.2.1 and
/// ical2json 5.0.0 (in lib). In Detroit clocks were put forward on 8 March 2026 and back on 1 November (tz database), so
/// that eight in the morning is 13:00 UTC in winter and 12:00 UTC in summer.
/// </summary>
[Collection(SiteCollection.Name)]
public sealed class CalendarParsersTests(SiteFixture site)
{
    private const string Title = "Hinge cut, größere; \"Nordhang\"";

    [Fact]
    public async Task IcalJs_ReadsTheFeed_RightAcrossDaylightSaving()
    {
        await using var visit = await OpenAsync();
        var events = await ReadAsync(visit, """
            const calendar = new ICAL.Component(ICAL.parse(text));
            for (const zone of calendar.getAllSubcomponents('vtimezone'))
                ICAL.TimezoneService.register(new ICAL.Timezone(zone));
            return calendar.getAllSubcomponents('vevent').map(one => new ICAL.Event(one)).map(one => ({
                uid: one.uid.split('@')[0], sequence: one.sequence, title: one.summary,
                status: one.component.getFirstPropertyValue('status'),
                start: one.startDate.isDate ? one.startDate.toString() : one.startDate.toJSDate().toISOString(),
                end: one.endDate.isDate ? one.endDate.toString() : one.endDate.toJSDate().toISOString() }));
            """);

        events.Select(Line).ShouldBe([
            "e 4 CONFIRMED 2026-03-06 2026-03-10",
            "a-7 4 CONFIRMED 2026-03-07T13:00:00.000Z 2026-03-07T22:00:00.000Z",
            "b-8 4 CONFIRMED 2026-03-08T12:00:00.000Z 2026-03-08T21:00:00.000Z",
            "f 4 CANCELLED 2026-10-30 2026-11-03",
            "c-31 4 CONFIRMED 2026-10-31T12:00:00.000Z 2026-10-31T21:00:00.000Z",
            "d-1 4 CONFIRMED 2026-11-01T13:00:00.000Z 2026-11-01T22:00:00.000Z",
        ]);
        events[0].GetProperty("title").GetString().ShouldBe(Title);
        events[3].GetProperty("title").GetString().ShouldBe($"Stopped: {Title}");
    }

    [Fact]
    public async Task Ical2Json_ReadsTheFeed_AsItIsWritten()
    {
        await using var visit = await OpenAsync();
        var events = await ReadAsync(visit, """
            const reader = await import('/parsers/ical2json/ical2json.js');
            const value = property => typeof property === 'object' ? property._ : property;
            return reader.convert(text).VCALENDAR[0].VEVENT.map(one => ({
                uid: one.UID.split('@')[0], sequence: Number(one.SEQUENCE), title: value(one.SUMMARY), status: one.STATUS,
                start: JSON.stringify(one.DTSTART), end: JSON.stringify(one.DTEND) }));
            """);

        events.Select(one => $"{one.GetProperty("uid")} {one.GetProperty("sequence")} {one.GetProperty("status")}").ShouldBe(
            ["e 4 CONFIRMED", "a-7 4 CONFIRMED", "b-8 4 CONFIRMED", "f 4 CANCELLED", "c-31 4 CONFIRMED", "d-1 4 CONFIRMED"]);
        events[0].GetProperty("start").GetString()!.ShouldContain("20260306");
        events[0].GetProperty("end").GetString()!.ShouldContain("20260310");
        events[2].GetProperty("start").GetString()!.ShouldContain("20260308T080000");
        events[2].GetProperty("start").GetString()!.ShouldContain("America/Detroit");
    }

    private static string Line(JsonElement one) =>
        $"{one.GetProperty("uid")} {one.GetProperty("sequence")} {one.GetProperty("status")} {one.GetProperty("start")} {one.GetProperty("end")}";

    private async Task<Visit> OpenAsync()
    {
        var visit = await site.OpenAsync(Screen.Desktop);
        await visit.Page.RouteAsync("**/parsers/**", async route => await route.FulfillAsync(new()
        {
            Body = await ScriptAsync(new Uri(route.Request.Url).AbsolutePath["/parsers/".Length..]),
            ContentType = "text/javascript",
        }));
        await visit.Page.GotoAsync("/sign-in");
        await visit.Page.AddScriptTagAsync(new() { Url = "/parsers/ical.js/ical.es5.min.js" });
        return visit;
    }

    /// <summary>ical2json asks its system for a home folder, which only its command line uses and no browser has.</summary>
    private static async Task<string> ScriptAsync(string file) =>
        (await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Calendars", "lib", file)))
        .Replace("import os from 'node:os';", "const os = { homedir: () => '' };");

    private async Task<JsonElement[]> ReadAsync(Visit visit, string read) =>
        (await visit.Page.EvaluateAsync<JsonElement>(
            $$"""async address => { const text = await (await fetch(address)).text(); {{read}} }""", site.Watched.Calendar))
        .EnumerateArray().ToArray();
}
