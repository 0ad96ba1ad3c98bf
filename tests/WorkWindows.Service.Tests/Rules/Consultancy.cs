using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Hangfire;
using Microsoft.Extensions.DependencyInjection;
using Shouldly;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;

namespace WorkWindows.Service.Tests.Rules;

/// <summary>
/// An organization with a consultant who has signed in, one property with mild weather and a task of tying down on it.
/// </summary>
/// <param name="Service">The service.</param>
/// <param name="Organization">The organization.</param>
/// <param name="Consultant">Signed in as <paramref name="Name"/>.</param>
/// <param name="Name">The consultant's mail address, which is their name too.</param>
/// <param name="Property">The property.</param>
/// <param name="Parcel">Its parcel.</param>
/// <param name="Task">The task.</param>
internal sealed record Consultancy(
    ServiceFixture Service, Guid Organization, HttpClient Consultant, string Name, Guid Property, Guid Parcel, Guid Task)
{
    public string Overrides => $"/api/properties/{Property}/overrides";

    public string Observations => $"/api/properties/{Property}/observations";

    public static async Task<Consultancy> OpenAsync(ServiceFixture service)
    {
        var organization = await service.Database.AddOrganizationAsync("Alder");
        var name = $"{Guid.NewGuid():N}@example.org";
        await service.AddPersonAsync(organization, name, Role.Consultant);
        var (client, _) = await service.SignInAsync(name);
        var (property, parcel) = await Land.CreateAsync(client, -84.4, 42.6, "26065", "MI");
        await MildWeather.AddAsync(service, organization, parcel);
        var task = (await Land.TaskAsync(client, parcel, "tie-down")).Id();
        return new(service, organization, client, name, property, parcel, task);
    }

    public Task<JsonElement> PutPackAsync(
        string text, string address = HousePack.Address, HttpStatusCode status = HttpStatusCode.OK) =>
        PutPackAsync(Consultant, text, address, status);

    public static async Task<JsonElement> PutPackAsync(
        HttpClient client, string text, string address, HttpStatusCode status = HttpStatusCode.OK)
    {
        using var content = new ByteArrayContent(Encoding.UTF8.GetBytes(text));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/yaml");
        using var answer = await client.PutAsync(address, content);
        var body = await answer.Content.ReadAsStringAsync();
        answer.StatusCode.ShouldBe(status, body);
        return JsonSerializer.Deserialize<JsonElement>(body);
    }

    public async Task<string> StateAsync(string date, Guid? task = null) =>
        (await Consultant.ReadAsync($"/api/tasks/{task ?? Task}/days/{date}")).Text("state");

    /// <summary>Kind, who, and whether there is a row before and after, the oldest first.</summary>
    public async Task<string[]> AuditAsync(string query = "")
    {
        var entries = await Consultant.ReadAsync($"/api/audit{query}");
        return
        [
            .. entries.EnumerateArray().Reverse().Select(entry =>
                $"{entry.Text("kind")} by {entry.Text("by")}: {Is(entry, "before")} -> {Is(entry, "after")}"),
        ];

        static string Is(JsonElement entry, string side) =>
            entry.GetProperty(side).ValueKind == JsonValueKind.Null ? "nothing" : "row";
    }

    /// <summary>How often the organization's tasks were put in the queue to be looked at.</summary>
    public int Looks() => Service.Services.GetRequiredService<JobStorage>().GetMonitoringApi()
        .EnqueuedJobs(JobQueues.Prompt, 0, 10_000).Select(job => job.Value.Job)
        .Count(job => job.Type == typeof(LookJob) && (Guid)job.Args[0] == Organization);
}
