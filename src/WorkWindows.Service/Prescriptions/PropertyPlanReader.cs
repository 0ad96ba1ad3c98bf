using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Prescriptions;

/// <summary>A property's decades.</summary>
public sealed record PropertyPlan(
    Guid Id, string Name, IReadOnlyList<ParcelYears> Parcels, IReadOnlyList<RankedTask> Ranked, int FirstYear, int LastYear);

/// <summary>Reads what was, is to be and will be done on a property.</summary>
public sealed class PropertyPlanReader(
    WorkWindowsDb db, VisibleProperties properties, TaskHours hours, WeekHandler week)
{
    /// <summary>How far ahead follow-ups are told, years.</summary>
    private const int YearsAhead = 20;

    private const string Hinge = "hinge-cut";

    /// <returns>Null when the caller sees no such property.</returns>
    public async Task<PropertyPlan?> ReadAsync(Guid id, CancellationToken cancellation)
    {
        var property = await properties.All.AsNoTracking().Include(row => row.Parcels)
            .SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (property is null)
            return null;
        var tasks = await db.PlannedTasks.AsNoTracking().Include(task => task.Prerequisites).Include(task => task.Parcel)
            .Where(task => task.Parcel.PropertyId == id).OrderBy(task => task.Key).ToListAsync(cancellation);
        var today = await week.TodayAsync(cancellation);
        var settings = await db.PracticeSettings.AsNoTracking().ToDictionaryAsync(row => row.PracticeId, cancellation);
        var open = tasks.FindAll(task => task.CompletedOn is null);
        var times = await hours.OfAsync(open, cancellation);
        var nearFood = open.FindAll(task => task.PracticeId == Hinge && task.Parcel.SiteFlags.Contains(SiteFlag.NearFood));
        ParcelYears[] parcels =
        [
            .. property.Parcels.OrderBy(parcel => parcel.Name).Select(parcel => Years(
                parcel, tasks.FindAll(task => task.ParcelId == parcel.Id), nearFood, today)),
        ];
        var years = parcels.SelectMany(parcel => parcel.Steps).Select(step => step.Year).Append(today.Year).ToList();
        return new(
            id, property.Name, parcels,
            Ranking.Of(open.Select(task => (
                task.Id, $"{Name(task.PracticeId)}, {task.Parcel.Name}",
                TaskPoints.Of(task, settings.GetValueOrDefault(task.PracticeId)), times[task.Id]))),
            years.Min(), Math.Min(years.Max(), today.Year + YearsAhead));
    }

    private static ParcelYears Years(
        Parcel parcel, List<PlannedTask> tasks, List<PlannedTask> nearFood, LocalDate today)
    {
        var steps = tasks.Select(task => new Step(
            task.Id, Name(task.PracticeId), task.CompletedOn is null ? StepState.Planned : StepState.Done,
            task.CompletedOn ?? task.ScheduledOn ?? task.NotBefore, task.CompletedOn ?? task.ScheduledOn ?? task.Deadline)
        {
            Year = (task.CompletedOn ?? task.ScheduledOn ?? task.NotBefore ?? task.Deadline ?? today).Year,
        }).Concat(Due(tasks, today)).OrderBy(step => step.Year).ThenBy(step => step.From ?? LocalDate.MaxIsoValue).ToList();
        return new(parcel.Id, parcel.Name, steps, [.. Problems(tasks), .. TooEarly(parcel, tasks, nearFood)]);
    }

    /// <summary>What completed work asks for and nobody has planned, and what that asks for in turn.</summary>
    private static IEnumerable<Step> Due(List<PlannedTask> tasks, LocalDate today)
    {
        foreach (var done in tasks.Where(task => task.CompletedOn is not null))
        {
            foreach (var rule in FollowUp.All.Where(rule => rule.After.Id == done.PracticeId))
            {
                if (tasks.Exists(task => task.PracticeId == rule.Practice.Id && task.Id != done.Id
                    && (task.CompletedOn is null || task.CompletedOn > done.CompletedOn)))
                {
                    continue;
                }
                var (from, to) = rule.Due(done.CompletedOn!.Value);
                yield return Step(rule, from, to);
                // A re-cut asks for the next one for as long as the page looks ahead.
                for (var again = FollowUp.All.FirstOrDefault(next => next.After == rule.Practice && next.Practice == rule.Practice);
                    again is not null && from.PlusYears(again.FromYears).Year <= today.Year + YearsAhead;)
                {
                    (from, to) = (from.PlusYears(again.FromYears), to.PlusYears(again.ToYears));
                    yield return Step(again, from, to);
                }
            }
        }

        static Step Step(FollowUp rule, LocalDate from, LocalDate to) =>
            new(null, rule.Practice.Name, StepState.Due, from, to) { Year = from.Year };
    }

    private static IEnumerable<string> Problems(List<PlannedTask> tasks)
    {
        var open = tasks.FindAll(task => task.CompletedOn is null);
        foreach (var task in open)
        {
            var practice = PracticeCatalogue.Find(task.PracticeId)!;
            foreach (var order in Sequence.Before(practice, open.Select(one => PracticeCatalogue.Find(one.PracticeId)!)))
            {
                var first = open.Find(one => one.PracticeId == order.First.Id)!;
                if (task.Prerequisites.All(link => link.PrerequisiteId != first.Id))
                    yield return $"{practice.Name} does not wait for {order.First.Name.ToLowerInvariant()}. {order.Because}";
            }
        }
    }

    /// <summary>Common practice, no source: bedding near food is used first, deep cover once that is there.</summary>
    private static IEnumerable<string> TooEarly(Parcel parcel, List<PlannedTask> tasks, List<PlannedTask> nearFood) =>
        parcel.SiteFlags.Contains(SiteFlag.DeepCover)
            ? tasks.Where(task => task is { PracticeId: Hinge, CompletedOn: null })
                .SelectMany(_ => nearFood, (task, first) => (task, first))
                .Where(one => one.task.Prerequisites.All(link => link.PrerequisiteId != one.first.Id))
                .Select(one => $"Hinge cut in deep cover does not wait for the one near food, {one.first.Parcel.Name}. "
                    + "Bedding near food comes first.")
            : [];

    private static string Name(string practice) => PracticeCatalogue.Find(practice)?.Name ?? practice;
}
