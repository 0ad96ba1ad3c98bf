using CsCheck;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Weather;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Weather.Knowledge;

namespace WorkWindows.Service.Tests.Weather;

public sealed class KnownReadingsTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 10, 12, 0);

    [Fact]
    public async Task AsOf_ShowsAValueFromTheMomentItCame_UntilAnotherTookItsPlace()
    {
        var station = await CreateAsync(database);
        await station.MergeAsync(Noon, Min(1, -3), Min(2, 4));
        await station.MergeAsync(Hours(1), Min(1, -5), Min(2, 4), Min(3, 6));
        await station.MergeAsync(Hours(2), Min(1, -5, 'S'));
        await station.MergeAsync(Hours(3), Min(1, -3));

        (await station.KnownAsync(Hours(-1))).ShouldBe("");
        (await station.KnownAsync(Noon)).ShouldBe("1:-3 2:4");
        (await station.KnownAsync(Hours(1) - Duration.FromMilliseconds(1))).ShouldBe("1:-3 2:4");
        (await station.KnownAsync(Hours(1))).ShouldBe("1:-5 2:4 3:6");
        (await station.KnownAsync(Hours(2))).ShouldBe("2:4 3:6", "the source rejects it now");
        (await station.KnownAsync(Hours(3))).ShouldBe("1:-3 2:4 3:6");
    }

    /// <summary>The law of the two times: whatever comes when, a past moment shows what was known then.</summary>
    [Fact]
    public void AsOf_ShowsWhatWasKnown_WhateverCameLater() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[-3, 3]).Array[0, 5].Array[1, 5].Sample(
            hours =>
            {
                Task.Run(() => CheckAsync(hours)).GetAwaiter().GetResult();
            },
            iter: 25, threads: 1);

    [Fact]
    public async Task Merge_KeepsNothing_WhenNothingElseComes()
    {
        var station = await CreateAsync(database);
        await station.MergeAsync(Noon, Min(1, -3), Min(2, 4, 'I'));

        (await station.MergeAsync(Hours(1), Min(1, -3), Min(2, 4, 'I'))).ShouldBe(new ImportCounts(0, 0, 2));

        await using var db = database.Open(station.Organization);
        (await db.SupersededReadings.AnyAsync(Cancellation)).ShouldBeFalse();
        (await db.StationReadings.Select(reading => reading.KnownSince).Distinct().SingleAsync(Cancellation)).ShouldBe(
            Noon);
        (await db.Stations.SingleAsync(Cancellation)).RecordVersion.ShouldBe(1);
    }

    [Fact]
    public async Task Merge_KeepsNoValueThatWasNeverKnown_WhenTwoComeInOneMoment()
    {
        var station = await CreateAsync(database);
        await station.MergeAsync(Noon, Min(1, -3));
        await station.MergeAsync(Noon, Min(1, -4));
        await station.MergeAsync(Noon, Min(1, -5));

        (await station.KnownAsync(Noon)).ShouldBe("1:-5");
        await using var db = database.Open(station.Organization);
        (await db.SupersededReadings.AnyAsync(Cancellation)).ShouldBeFalse();
    }

    [Fact]
    public async Task Merge_IsRefused_WhenTheClockWasSetBack()
    {
        var station = await CreateAsync(database);
        await station.MergeAsync(Noon, Min(1, -3));

        await Should.ThrowAsync<ClockSetBackException>(() => station.MergeAsync(Hours(-1), Min(1, -4)));

        (await station.KnownAsync(Noon)).ShouldBe("1:-3");
    }

    private async Task CheckAsync((int Day, int Value)[][] hours)
    {
        var station = await CreateAsync(database);
        var record = new SortedDictionary<int, double>();
        var expected = new List<string>();
        for (var hour = 0; hour < hours.Length; hour++)
        {
            var readings = hours[hour].DistinctBy(one => one.Day).ToArray();
            foreach (var (day, value) in readings)
                record[day] = value;
            await station.MergeAsync(Hours(hour), [.. readings.Select(one => Min(one.Day, one.Value))]);
            expected.Add(string.Join(' ', record.Select(one => $"{one.Key}:{one.Value}")));
        }
        for (var hour = 0; hour < hours.Length; hour++)
            (await station.KnownAsync(Hours(hour) + Duration.FromMinutes(59))).ShouldBe(expected[hour]);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private static Instant Hours(int hours) => Noon + Duration.FromHours(hours);
}
