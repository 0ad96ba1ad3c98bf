using System.Text.Json;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Rules;
using WorkWindows.Service.Tests.Safety.Checklists;

namespace WorkWindows.Service.Tests.Crews;

/// <summary>A consultancy with a crew of two, North, and a task that may be worked from 1 March 2025 on.</summary>
internal sealed record GivenCrew(GivenChecklist Checklist, Guid Crew)
{
    public Consultancy Office => Checklist.Office;
    public Guid Task => Checklist.Task;
    public Guid LeadId => Checklist.LeadId;

    public static async Task<GivenCrew> OpenAsync(ServiceFixture service)
    {
        var checklist = await GivenChecklist.OpenAsync(service);
        var (_, member) = await checklist.AddAsync(Role.CrewMember);
        var crew = await checklist.Office.Consultant.CreateAsync(
            "/api/crews", new { name = "North", leadId = checklist.LeadId, memberIds = new[] { member } });
        return new(checklist, crew.Id());
    }

    /// <returns>The id of another crew of two, South.</returns>
    public async Task<Guid> AddSouthAsync()
    {
        var (_, lead) = await Checklist.AddAsync(Role.CrewLead);
        var (_, member) = await Checklist.AddAsync(Role.CrewMember);
        return (await Office.Consultant.CreateAsync("/api/crews", new { name = "South", leadId = lead, memberIds = new[] { member } })).Id();
    }

    /// <returns>A new task on the same parcel.</returns>
    public async Task<JsonElement> AddTaskAsync(string practice)
    {
        var parcel = (await Office.Consultant.ReadAsync($"/api/tasks/{Task}")).GetProperty("parcelId").GetGuid();
        return await Office.Consultant.CreateAsync("/api/tasks", new { key = $"{Guid.NewGuid():N}", parcelId = parcel, practice, crewSize = 2 });
    }

    public Task<JsonElement> BookAsync(Guid task, Guid crew, string day, double? hours = null) =>
        Office.Consultant.CreateAsync("/api/bookings", new { taskId = task, crewId = crew, day, hours });

    public Task<JsonElement> ProposeAsync() => Office.Consultant.CreateAsync("/api/plans", new { days = 5 });

    public async Task<JsonElement[]> BookingsAsync() =>
        [.. (await Office.Consultant.ReadAsync("/api/bookings?from=2025-03-01&to=2025-12-31")).EnumerateArray()];
}
