using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Planning;
using WorkWindows.Planning.Checks;
using WorkWindows.Planning.Crews;
using WorkWindows.Planning.Differences;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Which days to plan.</summary>
/// <param name="Days">How many from today on; 60 where nothing is given.</param>
/// <param name="Seed">What repeats a plan; 1 where nothing is given.</param>
public sealed record PlanForm(int? Days, int? Seed);

/// <summary>Proposes plans, publishes and discards them.</summary>
public sealed class PlanHandler(
    WorkWindowsDb db, CurrentOrganization organization, PlanReader reader, BookingStore store, WeekHandler week,
    PromptLook look, Caller caller, IClock clock)
{
    private const int UsualDays = 60;
    private const int MostDays = 200;

    /// <summary>What somebody waits for at a page.</summary>
    private static readonly PlanLimits Limits = new() { Effort = 10, Seconds = 30 };

    public async Task<Change<StoredPlan>> ProposeAsync(PlanForm form, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (form.Days is not (null or (>= 1 and <= MostDays)))
            faults.Add("days", form.Days, $"a number of days from 1 to {MostDays}, or nothing for {UsualDays}");
        if (form.Seed is not (null or >= 0))
            faults.Add("seed", form.Seed, "a whole number of 0 or more, or nothing");
        if (faults.Any)
            return Change.Refused<StoredPlan>(faults);
        if (!await db.Crews.AnyAsync(cancellation))
            return Change.Conflict<StoredPlan>("There is no crew. Say who works together first.");
        var today = await week.TodayAsync(cancellation);
        // What is booked later is part of the same work, and would be planned again.
        var booked = await db.Bookings.Where(row => row.Task.CompletedOn == null).MaxAsync(row => (LocalDate?)row.Day, cancellation);
        var days = DaySpan.Between(
            today, LocalDate.Max(today.PlusDays((form.Days ?? UsualDays) - 1), booked ?? today));
        var input = await reader.ReadAsync(days, cancellation);
        var names = await db.NamesAsync(cancellation);
        var made = CrewPlanner.Plan(input.Case, Limits with { Seed = form.Seed ?? 1 });
        var content = DayWords.Stored(() => new PlanContent(
            made.Bookings,
            [.. made.LeftOut.Select(left => new LeftOutRow(
                Guid.Parse(left.TaskId), PlanWords.Title(left.TaskId, input), PlanWords.LeftOut(left, input)))],
            [.. PlanDifference.Between([.. input.Case.Fixed, .. input.Case.Announced], made.Bookings)
                .Select(one => DifferenceWords.Of(one, input))],
            Math.Round(made.Objective, 1), Math.Round(Math.Max(made.Bound, made.Objective), 1), Math.Round(made.Gap * 100, 1),
            Math.Round(made.ExpectedBenefit, 1), Math.Round(made.TravelMinutes / 60, 1), made.Seed, input.Case.Weights,
            [.. PlanCheck.Broken(input.Case, input.Case.Fixed).Select(one => PlanWords.Of(one, input, names)).Distinct()]));
        var plan = new StoredPlan
        {
            ProposedAt = clock.GetCurrentInstant(),
            ProposedById = caller.PersonId,
            ProposedBy = caller.Name,
            FirstDay = days.First,
            LastDay = days.Last,
            Status = PlanStatus.Proposed,
            Content = content.Write(),
        };
        db.Add(plan);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(plan);
    }

    /// <summary>Makes a proposed plan the crews' days, unless what is known now stands against it.</summary>
    public async Task<Change<StoredPlan>> PublishAsync(Guid id, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.CrewPlans.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } plan)
            return Change.NotFound<StoredPlan>();
        if (plan.Status != PlanStatus.Proposed)
            return Change.Conflict<StoredPlan>($"The plan was {(plan.Status == PlanStatus.Published ? "published" : "discarded")} already.");
        var today = await week.TodayAsync(cancellation);
        if (plan.LastDay < today)
            return Change.Conflict<StoredPlan>("All days of the plan are over. Plan anew.");
        var input = await reader.ReadAsync(DaySpan.Between(today, plan.LastDay), cancellation);
        var content = PlanContent.Read(plan);
        var kept = input.Case.Fixed.Select(one => (one.TaskId, one.Day)).ToHashSet();
        Planning.Cases.Booking[] coming =
        [
            .. input.Case.Fixed,
            .. content.Bookings.Where(one => one.Day >= today && !kept.Contains((one.TaskId, one.Day))),
        ];
        if (coming.Any(one => !input.Tasks.ContainsKey(Guid.Parse(one.TaskId)) || !input.Crews.ContainsKey(Guid.Parse(one.CrewId))))
            return Change.Conflict<StoredPlan>("Work of the plan is done, or a crew is gone. Plan anew.");
        var names = await db.NamesAsync(cancellation);
        var broken = PlanCheck.Broken(input.Case, coming).Except(PlanCheck.Broken(input.Case, input.Case.Fixed))
            .Select(one => PlanWords.Of(one, input, names)).Distinct().ToArray();
        if (broken.Length > 0)
        {
            return Change.Conflict<StoredPlan>(
                $"What is known has changed since the plan was made. Plan anew. {string.Join(" ", broken)}", ("conflicts", broken));
        }
        await ReplaceAsync(input, coming, today, cancellation);
        (plan.Status, plan.DecidedAt, plan.DecidedBy) = (PlanStatus.Published, clock.GetCurrentInstant(), caller.Name);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(plan);
    }

    public async Task<Change<StoredPlan>> DiscardAsync(Guid id, CancellationToken cancellation)
    {
        if (await db.CrewPlans.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } plan)
            return Change.NotFound<StoredPlan>();
        if (plan.Status == PlanStatus.Published)
            return Change.Conflict<StoredPlan>("The plan was published already; publish another in its place.");
        (plan.Status, plan.DecidedAt, plan.DecidedBy) = (PlanStatus.Discarded, clock.GetCurrentInstant(), caller.Name);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(plan);
    }

    /// <summary>A booking that stays as it was is not written anew, so that calendars do not show it as changed.</summary>
    private async Task ReplaceAsync(
        PlanInput input, Planning.Cases.Booking[] coming, LocalDate today, CancellationToken cancellation)
    {
        var open = input.Tasks.Keys.ToList();
        var stored = await db.Bookings.AsSplitQuery().Include(row => row.People).Include(row => row.Equipment)
            .Where(row => open.Contains(row.TaskId) && row.Day >= today && row.Day <= input.Case.Days.End).ToListAsync(cancellation);
        var wanted = coming.ToDictionary(one => (one.TaskId, one.Day));
        var same = stored.Where(row => row.IsFixed || (wanted.TryGetValue(($"{row.TaskId}", row.Day), out var one)
            && IsSame(PlanWords.Of(row), one))).ToList();
        db.RemoveRange(stored.Except(same));
        await db.SaveChangesAsync(cancellation);
        var left = same.Select(row => ($"{row.TaskId}", row.Day)).ToHashSet();
        foreach (var booking in coming.Where(one => !left.Contains((one.TaskId, one.Day))))
            store.Add(booking, isFixed: false);
        await db.SaveChangesAsync(cancellation);
        await store.TellTasksAsync(
            [.. stored.Select(row => row.TaskId).Union(coming.Select(one => Guid.Parse(one.TaskId)))], today, cancellation);
    }

    private static bool IsSame(Planning.Cases.Booking one, Planning.Cases.Booking other) =>
        one.CrewId == other.CrewId && one.Place == other.Place && Math.Abs(one.Hours - other.Hours) < 0.01
        && one.Members.Order(StringComparer.Ordinal).SequenceEqual(other.Members.Order(StringComparer.Ordinal))
        && one.EquipmentIds.Order(StringComparer.Ordinal).SequenceEqual(other.EquipmentIds.Order(StringComparer.Ordinal));
}
