using System.Text;
using NodaTime;
using WorkWindows.Engine.Weather;
using WorkWindows.Feeds.Daily;
using WorkWindows.Feeds.Ncei;
using WorkWindows.Feeds.Stations;
using WorkWindows.Feeds.Tests.Forecasts;
using WorkWindows.Feeds.Tests.Manners;
using static WorkWindows.Engine.Weather.DailyElement;

namespace WorkWindows.Feeds.Tests.Ncei;

public class NceiFeedTests
{
    private static readonly LocalDate Day = new(2020, 12, 31);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fetch_AsksForTheStationAndDays_InMetricUnitsWithFlags()
    {
        var query = "";
        await using var server = await ReplayServer.StartAsync(context =>
        {
            query = $"{context.Request.QueryString}";
            context.Response.Headers.ETag = "\"1\"";
            return ReplayServer.SendAsync(context, 200, "application/json", """
                [{"STATION":"USW00023174","DATE":"2020-12-30","TMIN":"6.0"},
                 {"STATION":"USW00023174","DATE":"2020-12-31","TMAX":"20.0","TMAX_ATTRIBUTES":",,W,2400","TMIN":"6.1",
                  "TMIN_ATTRIBUTES":",I,W","PRCP":"0.0","PRCP_ATTRIBUTES":"T,,W,2400","SNWD":"0","SNWD_ATTRIBUTES":"P,,0",
                  "WSF2":"8.1","WSF5":"10.7","RHMN":"38","AWND":"2.4"}]
                """u8.ToArray());
        });
        using var feeds = new TestFeeds(server.Address);
        var request = TestFeeds.Request(Day, Day.PlusDays(1), "America/Los_Angeles", "USW00023174");

        var reply = await new NceiFeed(feeds.Http, feeds.Options).FetchAsync(request, Cancellation);

        Assert.Equal(
            "?dataset=daily-summaries&stations=USW00023174&startDate=2020-12-31&endDate=2021-01-01"
            + "&dataTypes=TMIN,TMAX,WSF2,WSF5,WSFG,PRCP,SNWD,RHMN&format=json&units=metric&includeAttributes=true", query);
        var observed = Assert.IsType<DailyFeedReply.Observed>(reply);
        Assert.Equal(new FeedValidators("\"1\"", null), observed.Validators);
        Assert.True(observed.Faults.IsEmpty, observed.Faults.ToString());
        Assert.Equal(
            [
                new(Day, MinTemperatureC, 6.1, 'I'),
                new(Day, MaxTemperatureC, 20, null),
                new(Day, WindMps, 8.1, null),
                new(Day, GustMps, 10.7, null),
                new(Day, PrecipitationMm, 0, null),
                new(Day, MinHumidityPercent, 38, null),
            ],
            observed.Readings);
    }

    /// <summary>
    /// The first row is quoted in the format notes, the others say the same in the units of the service.
    /// </summary>
    [Theory]
    [InlineData(StationUnits.Tenths, "\"TMAX\":\"  200\",\"TMIN\":\"   61\",\"PRCP\":\"   46\",\"SNWD\":\"   25\"")]
    [InlineData(StationUnits.Metric, "\"TMAX\":\"20.0\",\"TMIN\":\"6.1\",\"PRCP\":\"4.6\",\"SNWD\":\"25\"")]
    [InlineData(StationUnits.Standard, "\"TMAX\":\"68\",\"TMIN\":\"43\",\"PRCP\":\"0.18\",\"SNWD\":\"1.0\"")]
    public void Read_GivesTheSame_InEachUnit(StationUnits units, string values)
    {
        var (readings, faults) = Read($"[{{\"DATE\":\"2020-12-31\",\"STATION\":\"USW00023174\",{values}}}]", units);

        Assert.True(faults.IsEmpty, faults.ToString());
        Assert.Equal(
            [(MinTemperatureC, 6.1), (MaxTemperatureC, 20), (PrecipitationMm, 4.6), (SnowDepthCm, 2.5)],
            readings.Select(reading => (reading.Element, Math.Round(reading.Value, 1))));
    }

    [Theory]
    [InlineData("\"TMAX\":\"68.0\"", "TMAX", "68")]                    // °F where °C was asked for
    [InlineData("\"TMAX\":\"warm\"", "TMAX", "warm")]
    [InlineData("\"TMAX\":\"20,0\"", "TMAX", "20,0")]
    [InlineData("\"TMAX\":\"20\",\"TMAX_ATTRIBUTES\":\"PT,,W\"", "TMAX_ATTRIBUTES", "PT,,W")]
    [InlineData("\"DATE\":\"2020-02-30\",\"TMAX\":\"20\"", "DATE", "2020-02-30")]
    [InlineData("\"DATE\":\"2020-01-02\",\"STATION\":\"USW00014922\"", "STATION", "USW00014922")]
    public void Read_NamesTheRow_OfAValueThatCannotBeUsed(string values, string field, string value)
    {
        var row = values.Contains("DATE", StringComparison.Ordinal) ? "" : "\"DATE\":\"2020-01-02\",";
        var station = values.Contains("STATION", StringComparison.Ordinal) ? "" : "\"STATION\":\"USW00023174\",";
        var (readings, faults) = Read(
            "[{\"STATION\":\"USW00023174\",\"DATE\":\"2020-01-01\",\"TMIN\":\"1\"}," + $"{{{station}{row}{values}}}]",
            StationUnits.Metric);

        var fault = Assert.Single(faults.Faults);
        Assert.Equal((null, $"[1].{field}", value), (fault.Line, fault.Field, fault.Value));
        Assert.Equal(MinTemperatureC, Assert.Single(readings).Element);
    }

    [Fact]
    public void Read_UsesNeitherValue_OfADayThatComesTwice()
    {
        var (readings, faults) = Read(
            """
            [{"STATION":"USW00023174","DATE":"2020-01-01","TMIN":"1"},
             {"STATION":"USW00023174","DATE":"2020-01-01","TMIN":"2"}]
            """, StationUnits.Metric);

        Assert.Equal("[1].TMIN", Assert.Single(faults.Faults).Field);
        Assert.Empty(readings);
    }

    [Theory]
    [InlineData("{\"errorCode\":400,\"errorMessage\":\"startDate is missing\"}")]
    [InlineData("[{\"STATION\":")]
    public void Read_RefusesWhatIsNoListOfDays(string json) =>
        Assert.Throws<FeedFormatException>(() => Read(json, StationUnits.Metric));

    [Fact]
    public async Task Fetch_GivesTheReason_WhenTheServiceRefuses()
    {
        await using var server = await ReplayServer.StartAsync(context => ReplayServer.SendAsync(
            context, 400, "application/json", "{\"errorCode\":400,\"errorMessage\":\"startDate is missing\"}"u8.ToArray()));
        using var feeds = new TestFeeds(server.Address);

        var fault = await Assert.ThrowsAsync<FeedRefusedException>(() => new NceiFeed(feeds.Http, feeds.Options)
            .FetchAsync(TestFeeds.Request(Day, Day), Cancellation));

        Assert.Equal("The feed answered 400 BadRequest: startDate is missing", fault.Message);
    }

    private static (IReadOnlyList<DailyReading> Readings, FaultReport Faults) Read(string json, StationUnits units)
    {
        var (readings, faults) = DailySummaries.Read(Encoding.UTF8.GetBytes(json), units, "USW00023174");
        return (readings, faults);
    }
}
