using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Suitability;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Stands;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

/// <summary>
/// A parcel's years: what was done, what is planned with the time in which it may be expected, and what that asks for later.
/// </summary>
internal static class ParcelYearsReader
{
    /// <summary>How far ahead follow-ups are told, years.</summary>
    public const int YearsAhead = 20;

    private const string Hinge = "hinge-cut";
    private const string Felling = "overstory-felling";

    /// <param name="parcel">The parcel.</param>
    /// <param name="tasks">All its tasks.</param>
    /// <param name="nearFood">Open hinge cuts near food on the same property.</param>
    /// <param name="stand">Its inventory; null where none was taken.</param>
    /// <param name="rules">What work asks for later.</param>
    /// <param name="today">The day it is.</param>
    public static ParcelYears Of(
        Parcel parcel, List<PlannedTask> tasks, List<PlannedTask> nearFood, StandInput? stand, ImmutableArray<FollowUp> rules,
        LocalDate today)
    {
        var planned = new Expectation(tasks, rules, today);
        var steps = tasks.Select(task => Step(task, planned)).ToList();
        steps.AddRange(Due(tasks, planned, today));
        return new(
            parcel.Id, parcel.Name,
            [.. steps.OrderBy(step => step.Year).ThenBy(step => step.Place).ThenBy(step => step.From ?? today)],
            [.. Problems(tasks), .. Shaded(tasks, stand), .. TooEarly(parcel, tasks, nearFood)]);
    }

    private static Step Step(PlannedTask task, Expectation planned)
    {
        var (from, to) = planned.Of(task);
        return new(task.Id, Name(task), task.CompletedOn is null ? StepState.Planned : StepState.Done, from, to)
        {
            Year = (from ?? to ?? planned.Today).Year,
            Place = planned.PlaceOf(task),
            IsExpected = planned.IsExpected(task),
        };
    }

    /// <summary>What work asks for and nobody has planned, and what that asks for in turn.</summary>
    private static IEnumerable<Step> Due(List<PlannedTask> tasks, Expectation planned, LocalDate today)
    {
        foreach (var before in tasks)
        {
            foreach (var rule in planned.Rules.Where(rule => rule.After.Id == before.PracticeId))
            {
                if (planned.Of(before) is not { From: { } done } || FollowUps.Answer(rule, before, tasks) is not null)
                    continue;
                var isExpected = before.CompletedOn is null;
                var ((from, to), place) = (rule.Due(done), planned.PlaceOf(before) + 1);
                yield return Step(rule, from, to, place, isExpected);
                // A re-cut asks for the next one for as long as the page looks ahead; one that is overdue from when it can be done.
                for (var again = planned.Rules.FirstOrDefault(next => next.After == rule.Practice && next.Practice == rule.Practice);
                    again is not null;)
                {
                    (from, to) = again.Due(LocalDate.Max(from, today));
                    if (from.Year > today.Year + YearsAhead)
                        break;
                    yield return Step(again, from, to, ++place, isExpected: true);
                }
            }
        }

        static Step Step(FollowUp rule, LocalDate from, LocalDate to, int place, bool isExpected) =>
            new(null, rule.Practice.Name, StepState.Due, from, to) { Year = from.Year, Place = place, IsExpected = isExpected };
    }

    private static IEnumerable<string> Problems(List<PlannedTask> tasks)
    {
        var open = tasks.FindAll(task => task.CompletedOn is null);
        var waits = open.ToLookup(task => task.Id, task => task.Prerequisites.Select(link => link.PrerequisiteId));
        foreach (var task in open)
        {
            var practice = PracticeCatalogue.Find(task.PracticeId)!;
            var before = Reached(task.Id);
            foreach (var order in Sequence.All.Where(order => order.Later == practice))
            {
                // What follows one piece of work waits for that one alone.
                var missing = open.Exists(first => first.PracticeId == order.First.Id && first.Id != task.Id
                    && (task.FollowsId is null || task.FollowsId == first.Id) && !before.Contains(first.Id));
                if (missing)
                    yield return $"{practice.Name} does not wait for {order.First.Name.ToLowerInvariant()}. {order.Because}";
            }
        }

        HashSet<Guid> Reached(Guid task)
        {
            var (found, left) = (new HashSet<Guid>(), new Stack<Guid>([task]));
            while (left.TryPop(out var at))
            {
                foreach (var first in waits[at].SelectMany(ids => ids).Where(found.Add))
                    left.Push(first);
            }
            return found;
        }
    }

    /// <summary>Hinges that would die in the shade. Where the overstory is felled, the inventory may be older than that.</summary>
    private static IEnumerable<string> Shaded(List<PlannedTask> tasks, StandInput? stand)
    {
        if (stand is null || !tasks.Exists(task => task is { PracticeId: Hinge, CompletedOn: null })
            || tasks.Exists(task => task.PracticeId == Felling))
        {
            return [];
        }
        return HingeStand.Of(stand.Stand, stand.Limits, stand.Flags, null)
            .Where(finding => finding is { Key: "canopy", Fit: not Fit.Fits }).Select(finding => finding.Says);
    }

    /// <summary>Common practice, no source: bedding near food is used first, deep cover once that is there.</summary>
    private static IEnumerable<string> TooEarly(Parcel parcel, List<PlannedTask> tasks, List<PlannedTask> nearFood) =>
        parcel.SiteFlags.Contains(SiteFlag.DeepCover)
            ? tasks.Where(task => task is { PracticeId: Hinge, CompletedOn: null })
                .SelectMany(_ => nearFood.Where(first => first.ParcelId != parcel.Id), (task, first) => (task, first))
                .Where(one => one.task.Prerequisites.All(link => link.PrerequisiteId != one.first.Id))
                .Select(one => $"Hinge cut in deep cover does not wait for the one near food, {one.first.Parcel.Name}. "
                    + "Bedding near food comes first.")
            : [];

    private static string Name(PlannedTask task) => PracticeCatalogue.Find(task.PracticeId)?.Name ?? task.PracticeId;
}

/// <summary>When each task of a parcel was done or may be expected.</summary>
internal sealed class Expectation
{
    private readonly Dictionary<Guid, PlannedTask> tasks;
    private readonly Dictionary<Guid, (LocalDate? From, LocalDate? To)> times = [];
    private readonly Dictionary<Guid, int> places = [];

    public Expectation(List<PlannedTask> tasks, ImmutableArray<FollowUp> rules, LocalDate today)
    {
        (this.tasks, Rules, Today) = (tasks.ToDictionary(task => task.Id), rules, today);
        foreach (var task in tasks)
            Of(task);
    }

    public ImmutableArray<FollowUp> Rules { get; }

    public LocalDate Today { get; }

    /// <summary>Whether its time is reckoned from that of work before it, which is not done.</summary>
    public bool IsExpected(PlannedTask task) => task is { CompletedOn: null, ScheduledOn: null, NotBefore: null, Deadline: null }
        && Of(task).From is not null;

    /// <returns>Its first and last day; null where nothing tells.</returns>
    public (LocalDate? From, LocalDate? To) Of(PlannedTask task)
    {
        if (times.TryGetValue(task.Id, out var known))
            return known;
        // Against a circle, which is refused wherever tasks are put in order.
        times[task.Id] = (null, null);
        return times[task.Id] = Reckon(task);
    }

    /// <summary>How many pieces of work of the parcel come before it, one after the other.</summary>
    public int PlaceOf(PlannedTask task)
    {
        if (places.TryGetValue(task.Id, out var known))
            return known;
        places[task.Id] = 0;
        return places[task.Id] = Before(task).Select(first => PlaceOf(first) + 1).DefaultIfEmpty(0).Max();
    }

    private IEnumerable<PlannedTask> Before(PlannedTask task) => task.Prerequisites.Select(link => (Guid?)link.PrerequisiteId)
        .Append(task.FollowsId).Distinct().Select(id => id is { } first ? tasks.GetValueOrDefault(first) : null).OfType<PlannedTask>();

    private (LocalDate? From, LocalDate? To) Reckon(PlannedTask task)
    {
        if ((task.CompletedOn ?? task.ScheduledOn) is { } day)
            return (day, day);
        if (task.NotBefore is not null || task.Deadline is not null)
            return (task.NotBefore, task.Deadline);
        if (task.FollowsId is { } id && tasks.TryGetValue(id, out var followed)
            && Rules.FirstOrDefault(rule => rule.After.Id == followed.PracticeId && rule.Practice.Id == task.PracticeId) is { } rule)
        {
            return rule.Due(Of(followed).From ?? Today);
        }
        var last = Before(task).Where(first => first.CompletedOn is null).Select(first => Of(first).From).Max();
        return (last, null);
    }
}
