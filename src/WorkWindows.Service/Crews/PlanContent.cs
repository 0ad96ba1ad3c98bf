using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using WorkWindows.Planning.Cases;
using PlanBooking = WorkWindows.Planning.Cases.Booking;

namespace WorkWindows.Service.Crews;

/// <summary>A task that a plan leaves out.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Title">The work and its place.</param>
/// <param name="Says">Why.</param>
public sealed record LeftOutRow(Guid TaskId, string Title, string Says);

/// <summary>What a stored plan holds.</summary>
/// <param name="Bookings">Crews' days.</param>
/// <param name="LeftOut">Tasks that no crew does, and why.</param>
/// <param name="Differences">What is other than what was published when it was made, a sentence each.</param>
/// <param name="Objective">Points.</param>
/// <param name="Bound">No plan has more points.</param>
/// <param name="GapPercent">How far it may be from the best.</param>
/// <param name="ExpectedBenefit">Points of the work, each times its chance.</param>
/// <param name="TravelHours">Hours of driving.</param>
/// <param name="Seed">What repeats it.</param>
/// <param name="Weights">What was weighed.</param>
/// <param name="Troubles">What stands against work that was set by hand, a sentence each; none in plans of earlier versions.</param>
public sealed record PlanContent(
    ImmutableArray<PlanBooking> Bookings, ImmutableArray<LeftOutRow> LeftOut, ImmutableArray<string> Differences,
    double Objective, double Bound, double GapPercent, double ExpectedBenefit, double TravelHours, int Seed,
    PlanWeights Weights, IReadOnlyList<string>? Troubles = null)
{
    private static readonly JsonSerializerOptions Options =
        new JsonSerializerOptions(JsonSerializerDefaults.Web).ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public string Write() => JsonSerializer.Serialize(this, Options);

    public static PlanContent Read(StoredPlan plan) => JsonSerializer.Deserialize<PlanContent>(plan.Content, Options)!;
}
