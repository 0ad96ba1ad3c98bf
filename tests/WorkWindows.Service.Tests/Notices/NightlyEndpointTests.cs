using System.Net;
using Hangfire;
using Microsoft.Extensions.DependencyInjection;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices;

public sealed class NightlyEndpointTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static readonly Uri Address = new("/api/nightly-run", UriKind.Relative);

    [Fact]
    public async Task Post_QueuesTheNightOfTheCallersOrganization()
    {
        var organization = await service.Database.AddOrganizationAsync("Alder");
        using var consultant = await service.MachineAsync(organization);

        using var answer = await consultant.PostAsync(Address, null);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        var queued = service.Services.GetRequiredService<JobStorage>().GetMonitoringApi().EnqueuedJobs(
            "default", 0, 100)
            .Select(job => job.Value.Job).Where(job => job.Type == typeof(NightlyJob));
        Assert.Contains(organization, queued.Select(job => (Guid)job.Args[0]));
    }

    [Fact]
    public async Task Post_IsForConsultants()
    {
        using var crew =
            await service.MachineAsync(await service.Database.AddOrganizationAsync("Birch"), Role.CrewLead);

        using var answer = await crew.PostAsync(Address, null);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }
}
