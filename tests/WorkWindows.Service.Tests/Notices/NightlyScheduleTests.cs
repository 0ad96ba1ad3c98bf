using Hangfire;
using Hangfire.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Storage;
using static WorkWindows.Service.Tests.Notices.GivenNight;

namespace WorkWindows.Service.Tests.Notices;

public sealed class NightlyScheduleTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    [Fact]
    public async Task SynchronizeAsync_FollowsTheOrganizationsAndTheirZones()
    {
        var (one, other) = (await database.AddOrganizationAsync("One"), await database.AddOrganizationAsync("Other"));
        using var host = new NoticeHost(database, new FakeClock(Now));
        await host.InScopeAsync<NightlySchedule>(schedule => schedule.SynchronizeAsync(default));
        Nightly(host).ShouldBe(Jobs((one, "America/Detroit"), (other, "America/Detroit")));

        await using (var db = database.Open(one))
        {
            await db.Organizations.ExecuteUpdateAsync(organizations =>
                organizations.SetProperty(organization => organization.TimeZone, "Pacific/Honolulu"));
        }
        await using (var db = database.Open(other))
            await db.Organizations.ExecuteDeleteAsync();
        await host.InScopeAsync<NightlySchedule>(schedule => schedule.SynchronizeAsync(default));

        Nightly(host).ShouldBe(Jobs((one, "Pacific/Honolulu")));
    }

    [Fact]
    public async Task AddStanding_SendsEveryMinute()
    {
        using var host = new NoticeHost(database, new FakeClock(Now));

        await host.InScopeAsync<NightlySchedule>(schedule =>
        {
            schedule.AddStanding();
            return Task.CompletedTask;
        });

        using var connection = host.Get<JobStorage>().GetConnection();
        connection.GetRecurringJobs().Single(job => job.Id == "outbox").Cron.ShouldBe("* * * * *");
    }

    private static List<string> Nightly(NoticeHost host)
    {
        using var connection = host.Get<JobStorage>().GetConnection();
        return [.. connection.GetRecurringJobs().Where(job => job.Job.Type == typeof(NightlyJob))
            .Select(job => $"{job.Id} {job.Cron} {job.TimeZoneId}").Order()];
    }

    private static List<string> Jobs(params (Guid Id, string Zone)[] organizations) =>
        [.. organizations.Select(one => $"nightly:{one.Id} 0 4 * * * {one.Zone}").Order()];
}
