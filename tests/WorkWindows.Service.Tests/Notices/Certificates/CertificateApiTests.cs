using System.Net;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Notices.Certificates;

public sealed class CertificateApiTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task Certificates_AreReplacedAsAWhole()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var client = await service.MachineAsync(organization);
        var address = $"/api/people/{await PersonAsync(organization)}/certificates";

        await client.PutAsync(address, new[]
        {
            new { title = "pesticide licence", validUntil = "2028-12-31" }, new { title = "first aid and CPR", validUntil = "2027-03-31" },
        });
        await client.PutAsync(address, new[] { new { title = "first aid and CPR", validUntil = "2029-03-31" } });

        (await client.ReadAsync(address)).EnumerateArray().Select(one => $"{one.Text("title")} {one.Text("validUntil")}")
            .ShouldBe(["first aid and CPR 2029-03-31"]);
    }

    [Fact]
    public async Task Certificates_AreRefusedWhole_WithTheFieldAndWhatIsAccepted()
    {
        var organization = await service.Database.AddOrganizationAsync($"Org {Guid.NewGuid():N}");
        var client = await service.MachineAsync(organization);
        var address = $"/api/people/{await PersonAsync(organization)}/certificates";

        var problem = await client.RefusedAsync(HttpMethod.Put, address, new object[]
        {
            new { title = "first aid", validUntil = "2027-03-31" }, new { title = "first aid" }, new { title = "", validUntil = "2027-03-31" },
        }, HttpStatusCode.BadRequest);

        problem.Error("[1].title").ShouldContain("each title once");
        problem.Error("[1].validUntil").ShouldContain("such as 2027-03-31");
        problem.Error("[2].title").ShouldContain("a name of at most 200 characters");
        (await client.ReadAsync(address)).GetArrayLength().ShouldBe(0);
    }

    private Task<Guid> PersonAsync(Guid organization) =>
        service.AddPersonAsync(organization, $"l.{Guid.NewGuid():N}@example.org", Role.CrewLead);
}
