using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
using WorkWindows.Service.Tests.Rules;

namespace WorkWindows.Service.Tests.Safety.Checklists;

/// <summary>A hinge cut on a mild first of March 2025, seven in the morning in Detroit, led by a crew lead.</summary>
/// <param name="Office">The consultancy.</param>
/// <param name="Task">The task.</param>
/// <param name="Lead">Signed in as <paramref name="LeadName"/>.</param>
/// <param name="LeadId">The crew lead.</param>
/// <param name="LeadName">The lead's mail address, which is their name too.</param>
internal sealed record GivenChecklist(Consultancy Office, Guid Task, HttpClient Lead, Guid LeadId, string LeadName)
{
    public const string Day = "2025-03-01";

    public string List => $"/api/tasks/{Task}/checklists/{Day}";

    public string Signatures => $"{List}/signatures";

    public static async Task<GivenChecklist> OpenAsync(ServiceFixture service, string practice = "hinge-cut")
    {
        service.Clock.Reset(Instant.FromUtc(2025, 3, 1, 12, 0));
        var office = await Consultancy.OpenAsync(service);
        await CalmWeather.AddAsync(office);
        var name = $"lead.{Guid.NewGuid():N}@example.org";
        var lead = await service.AddPersonAsync(office.Organization, name, Role.CrewLead);
        var task = await office.Consultant.CreateAsync("/api/tasks", new
        {
            key = Guid.NewGuid().ToString("N"),
            parcelId = office.Parcel,
            practice,
            crewSize = 2,
            crewLeadId = lead,
        });
        return new(office, task.Id(), (await service.SignInAsync(name)).Client, lead, name);
    }

    /// <summary>Somebody else of the organization.</summary>
    public async Task<(HttpClient Client, Guid Id)> AddAsync(Role role)
    {
        var name = $"{Guid.NewGuid():N}@example.org";
        var id = await Office.Service.AddPersonAsync(Office.Organization, name, role);
        return ((await Office.Service.SignInAsync(name)).Client, id);
    }

    /// <summary>A signature under the list as it stands, every line acknowledged.</summary>
    public async Task<Signed> FormAsync()
    {
        var list = await Lead.ReadAsync(List);
        return new(
            Guid.NewGuid(), null, list.Text("version"),
            [.. list.GetProperty("items").EnumerateArray().Select(item => new Line(item.Text("id"), item.Text("text")))],
            "T. Vance", "2025-03-01T06:50:00-05:00");
    }

    public async Task<JsonElement> SignAsync(HttpClient? by = null) =>
        await (by ?? Lead).CreateAsync(Signatures, await FormAsync());

    public async Task<string> ReleaseAsync() =>
        (await Lead.ReadAsync(List)).GetProperty("release").Text("state");

    public async Task<int> StoredAsync() => (await Lead.ReadAsync(Signatures)).GetArrayLength();

    /// <summary>The parcel turns out to be steep, which changes one line.</summary>
    public async Task ChangeListAsync()
    {
        await using var db = Office.Service.Database.Open(Office.Organization);
        (await db.Parcels.SingleAsync()).SiteFlags = [SiteFlag.SteepSlope];
        await db.SaveChangesAsync();
    }
}

internal sealed record Line(string? Id, string? Text);

internal sealed record Signed(
    Guid? Key, Guid? PersonId, string? Version, Line[]? Items, string? Name, string? SignedAt,
    string? InsteadBecause = null);
