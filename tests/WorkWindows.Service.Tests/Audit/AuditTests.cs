using System.Net;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Rules;

namespace WorkWindows.Service.Tests.Audit;

public sealed class AuditTests(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    [Fact]
    public async Task LeafOut_IsWrittenDown_WithWhatItSaidBeforeAndAfter_AndOnceOnly()
    {
        var given = await Consultancy.OpenAsync(service);
        var address = $"{given.Observations}/leaf-out/2024";

        await given.Consultant.PutAsync(address, new { observedOn = "2024-04-20" });
        await given.Consultant.PutAsync(address, new { observedOn = "2024-04-20" });
        await given.Consultant.PutAsync(address, new { observedOn = "2024-04-28" });
        (await given.Consultant.DeleteAsync(address)).StatusCode.ShouldBe(HttpStatusCode.NoContent);

        var entries =
            (await given.Consultant.ReadAsync("/api/audit?kind=leaf-out")).EnumerateArray().Reverse().ToArray();
        entries.Select(entry => (Day(entry, "before"), Day(entry, "after"))).ShouldBe(
            [(null, "2024-04-20"), ("2024-04-20", "2024-04-28"), ("2024-04-28", null)]);
        entries.ShouldAllBe(entry => entry.Text("by") == given.Name);

        static string? Day(System.Text.Json.JsonElement entry, string side) =>
            entry.GetProperty(side) is { ValueKind: System.Text.Json.JsonValueKind.Object } row
                ? row.Text("observedOn")
                : null;
    }

    [Fact]
    public async Task List_HasTheDaysAskedFor_InTheOrganizationsZone()
    {
        var given = await Consultancy.OpenAsync(service);
        // Half past eleven in the evening of 28 February in Detroit.
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 4, 30));
        await given.PutPackAsync(HousePack.Text());
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        await given.PutPackAsync(HousePack.Text("2"));

        (await given.AuditAsync()).Length.ShouldBe(2);
        (await given.AuditAsync("?from=2025-02-28&to=2025-02-28"))
            .ShouldBe([$"rule-pack by {given.Name}: nothing -> row"]);
        (await given.AuditAsync("?from=2025-03-01")).ShouldBe([$"rule-pack by {given.Name}: row -> row"]);
        (await given.AuditAsync("?kind=override")).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("?kind=weather", "kind", "override, leaf-out, site-reading, rule-pack")]
    [InlineData("?from=yesterday", "from", "a date such as 2025-01-31")]
    [InlineData("?from=2023-01-01&to=2025-01-01", "to", "at most 400 days")]
    public async Task List_NamesWhatIsWrongWithTheQuestion(string query, string field, string accepted)
    {
        var given = await Consultancy.OpenAsync(service);

        (await given.Consultant.RefusedAsync(HttpMethod.Get, $"/api/audit{query}", null, HttpStatusCode.BadRequest))
            .Error(field).ShouldContain(accepted);
    }

    [Fact]
    public async Task List_IsForConsultants_OfTheOrganization()
    {
        var (given, other) = (await Consultancy.OpenAsync(service), await Consultancy.OpenAsync(service));
        await given.PutPackAsync(HousePack.Text());
        var crew = await service.MachineAsync(given.Organization, Role.CrewLead);

        await crew.RefusedAsync(HttpMethod.Get, "/api/audit", null, HttpStatusCode.Forbidden);
        (await other.AuditAsync()).ShouldBeEmpty();
    }
}
