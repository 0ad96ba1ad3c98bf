using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Acis;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Acis;

public class AcisFeedTests
{
    private static readonly LocalDate NewYear = new(2000, 1, 1);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public void Read_GivesTheRecordedReply()
    {
        // Mean and minimum of 1 January 2000 at Lincoln: 37.5 and 26 °F.
        AcisElement[] asked =
        [
            new("avgt", MaxTemperatureC, ElementUnit.Fahrenheit), new("mint", MinTemperatureC, ElementUnit.Fahrenheit),
        ];
        var (readings, faults) = StationData.Read(
            Encoding.UTF8.GetBytes(Recording.Reply("acis_stndata.yml")), "USW00014939", [.. asked],
            new(NewYear, NewYear));

        Assert.True(faults.IsEmpty);
        Assert.Equal(
            [(NewYear, MinTemperatureC, -3.333), (NewYear, MaxTemperatureC, 3.056)],
            readings.Select(reading => (reading.Date, reading.Element, Math.Round(reading.Value, 3))));
    }

    [Fact]
    public async Task Fetch_AsksAsTheRecordedRequestDoes()
    {
        JsonDocument? question = null;
        await using var server = await ReplayServer.StartAsync(async context =>
        {
            Assert.Equal(("POST", "application/json"), (context.Request.Method, context.Request.ContentType));
            question = await JsonDocument.ParseAsync(context.Request.Body);
            await SendAsync(context, Reply("[\"2000-01-01\",\"37\",\"26\",\"0.10\",\"2\"]"));
        });
        using var feeds = new TestFeeds(server.Address);

        var reply = await FetchAsync(feeds);

        Assert.Equal("/StnData", server.Requests.Single().Path);
        using var recorded = JsonDocument.Parse(Recording.Request("acis_stndata.yml"));
        var (asked, known) = (question!.RootElement, recorded.RootElement);
        Assert.Equal(
            known.GetProperty("elems")[1].GetRawText().Replace(" ", ""), asked.GetProperty("elems")[1].GetRawText());
        Assert.Equal(
            ("USW00014939", "2000-01-01", "2000-01-31"),
            (asked.GetProperty("sid").GetString(), asked.GetProperty("sdate").GetString(),
                asked.GetProperty("edate").GetString()));
        Assert.Equal(
            [
                new DailyReading(NewYear, MinTemperatureC, -3.333333333, null),
                new DailyReading(NewYear, MaxTemperatureC, 2.777777778, null),
                new DailyReading(NewYear, PrecipitationMm, 2.54, null),
                new DailyReading(NewYear, SnowDepthCm, 5.08, null),
            ],
            Assert.IsType<DailyFeedReply.Observed>(reply).Readings);
    }

    [Theory]
    [InlineData("M", "M", "M", "M", "")]
    [InlineData("37", "26", "S", "T", "MinTemperatureC -3.3, MaxTemperatureC 2.8, SnowDepthCm 0")]
    [InlineData("M", "M", "T", "M", "PrecipitationMm 0")]
    [InlineData("M", "M", "1.00A", "M", "PrecipitationMm 25.4 A")]        // the total of several days
    [InlineData("M", "M", "TA", "M", "PrecipitationMm 0 A")]
    public async Task Fetch_ReadsWhatStandsForAValue(string max, string min, string rain, string snow, string expected)
    {
        var observed = await ObserveAsync(Reply($"[\"2000-01-01\",\"{max}\",\"{min}\",\"{rain}\",\"{snow}\"]"));

        Assert.True(observed.Faults.IsEmpty);
        Assert.Equal(expected, string.Join(", ", observed.Readings.Select(reading =>
            $"{reading.Element} {reading.Value:0.#} {reading.QualityFlag}".Trim())));
    }

    [Theory]
    [InlineData("[\"2000-01-01\",\"212\",\"26\",\"0\",\"0\"]", "data[0] maxt", "212")]
    [InlineData("[\"2000-01-01\",\"T\",\"26\",\"0\",\"0\"]", "data[0] maxt", "T")]
    [InlineData("[\"2000-01-01\",\"37\",\"\",\"0\",\"0\"]", "data[0] mint", "")]
    [InlineData("[\"2000-01-01\",\"37\",\"26\",\"-1\",\"0\"]", "data[0] pcpn", "-1")]
    [InlineData("[\"2000-01-01\",\"37\",\"26\",\"InfinityA\",\"0\"]", "data[0] pcpn", "InfinityA")]
    [InlineData("[\"2000-01-01\",\"37\",null,\"0\",\"0\"]", "data[0] mint", "null")]
    [InlineData("[\"2000-02-30\",\"37\",\"26\",\"0\",\"0\"]", "data[0][0]", "\"2000-02-30\"")]
    [InlineData("[\"2000-01-01\",\"37\"]", "data[0]", "[\"2000-01-01\",\"37\"]")]
    public async Task Fetch_NamesTheValuesThatCannotBeUsed_AndKeepsTheOthers(string row, string field, string value)
    {
        var observed = await ObserveAsync(Reply(row, "[\"2000-01-02\",\"37\",\"26\",\"0\",\"0\"]"));

        var fault = Assert.Single(observed.Faults.Faults);
        Assert.Equal((field, value), (fault.Field, fault.Value));
        Assert.Equal(4, observed.Readings.Count(reading => reading.Date == NewYear.PlusDays(1)));
    }

    [Theory]
    [InlineData("38", 1)]
    [InlineData("37", 2)]   // the same again says nothing else
    public async Task Fetch_UsesNeitherOfTwoValuesThatDiffer(string again, int expected)
    {
        var observed = await ObserveAsync(
            Reply("[\"2000-01-01\",\"37\",\"26\",\"M\",\"M\"]", $"[\"2000-01-01\",\"{again}\",\"M\",\"M\",\"M\"]"));

        Assert.Equal(expected, observed.Readings.Length);
        Assert.Equal("data[1] maxt", Assert.Single(observed.Faults.Faults).Field);
    }

    [Theory]
    [InlineData("{\"error\": \"no data available\"}", "The service answered with an error: no data available")]
    [InlineData("{\"meta\": {}}", "The reply has no 'data', so it is not a station's record.")]
    [InlineData(
        "{\"meta\": {\"sids\": [\"USW00014922 6\"]}, \"data\": []}", "The reply is not of station USW00014939.")]
    public async Task Fetch_RefusesAReplyWithoutARecord(string body, string message) =>
        Assert.Equal(message, (await Assert.ThrowsAsync<FeedFormatException>(() => ObserveAsync(body))).Message);

    [Fact]
    public async Task Fetch_RefusesAPlaceWithoutAStation()
    {
        using var feeds = new TestFeeds(new("http://127.0.0.1:9/"));
        var request = TestFeeds.Request(NewYear, NewYear, station: null);
        var feed = new AcisFeed(feeds.Http, feeds.Options);

        Assert.False(feed.Serves(request.Place));
        await Assert.ThrowsAsync<ArgumentException>(() => feed.FetchAsync(request, Cancellation));
    }

    private static async Task<DailyFeedReply.Observed> ObserveAsync(string body)
    {
        await using var server = await ReplayServer.StartAsync(context => SendAsync(context, body));
        using var feeds = new TestFeeds(server.Address);
        return Assert.IsType<DailyFeedReply.Observed>(await FetchAsync(feeds));
    }

    private static Task<DailyFeedReply> FetchAsync(TestFeeds feeds) => new AcisFeed(feeds.Http, feeds.Options)
        .FetchAsync(TestFeeds.Request(NewYear, new(2000, 1, 31), "America/Chicago"), Cancellation);

    private static string Reply(params string[] rows) =>
        $$"""{"meta": {"uid": 12527, "sids": ["14939 1", "USW00014939 6"]}, "data": [{{string.Join(',', rows)}}]}""";

    private static Task SendAsync(HttpContext context, string body) =>
        ReplayServer.SendAsync(context, 200, "application/json", Encoding.UTF8.GetBytes(body));
}
