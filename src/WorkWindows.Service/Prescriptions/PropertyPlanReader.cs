using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Stands;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Prescriptions;

/// <summary>A property's decades.</summary>
public sealed record PropertyPlan(
    Guid Id, string Name, Guid? LandownerId, IReadOnlyList<ParcelYears> Parcels, IReadOnlyList<RankedTask> Ranked, int FirstYear,
    int LastYear);

/// <summary>Reads what was, is to be and will be done on a property.</summary>
public sealed class PropertyPlanReader(
    WorkWindowsDb db, VisibleProperties properties, TaskHours hours, WeekHandler week, StandReader stands)
{
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
        var rules = await db.FollowUpsAsync(cancellation);
        var standing = await stands.ReadAsync(property, cancellation);
        var nearFood = open.FindAll(task => task.PracticeId == Hinge && task.Parcel.SiteFlags.Contains(SiteFlag.NearFood));
        ParcelYears[] parcels =
        [
            .. property.Parcels.OrderBy(parcel => parcel.Name).Select(parcel => ParcelYearsReader.Of(
                parcel, tasks.FindAll(task => task.ParcelId == parcel.Id), nearFood, standing.GetValueOrDefault(parcel.Id), rules, today)),
        ];
        var years = parcels.SelectMany(parcel => parcel.Steps).Select(step => step.Year).Append(today.Year).ToList();
        return new(
            id, property.Name, property.LandownerId, parcels,
            Ranking.Of([.. open.Where(task => !open.Exists(first => first.Id == task.FollowsId)).Select(task => new Rankable(
                task.Id, $"{Name(task.PracticeId)}, {task.Parcel.Name}",
                TaskPoints.Of(task, settings.GetValueOrDefault(task.PracticeId)), times[task.Id],
                [.. task.Prerequisites.Select(link => link.PrerequisiteId)]))]),
            years.Min(), Math.Min(years.Max(), today.Year + ParcelYearsReader.YearsAhead));
    }

    private static string Name(string practice) => PracticeCatalogue.Find(practice)?.Name ?? practice;
}
