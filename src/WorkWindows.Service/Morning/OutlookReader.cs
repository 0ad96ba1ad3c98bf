using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Morning;

/// <summary>A task that is to be done, where it is, and what was last said of its days.</summary>
public sealed record OutlookRow
{
    public required Guid Id { get; init; }
    public required string PracticeId { get; init; }
    public required Guid ParcelId { get; init; }
    public required string Parcel { get; init; }
    public required Guid PropertyId { get; init; }
    public required string Property { get; init; }
    public required string CountyFips { get; init; }
    public required string State { get; init; }
    public required string? Owner { get; init; }
    public required int CrewSize { get; init; }
    public required LocalDate? NotBefore { get; init; }
    public required LocalDate? Deadline { get; init; }
    public required LocalDate? ScheduledOn { get; init; }

    /// <summary>Whether work that comes first is not done.</summary>
    public required bool Waits { get; init; }

    public required Instant? SeenAt { get; init; }
    public required LocalDate? FirstDay { get; init; }
    public required string? States { get; init; }
    public required LocalDate? BeforeFirstDay { get; init; }
    public required string? BeforeStates { get; init; }

    /// <summary>The last day of the season that runs now.</summary>
    public required LocalDate? LastDay { get; init; }

    public required string? ClosedBy { get; init; }

    public string Practice => PracticeCatalogue.Find(PracticeId)?.Name ?? PracticeId;

    /// <summary>The last day on which it may be done, whatever ends it; null where nothing is in sight.</summary>
    public LocalDate? ClosesOn => LastDay is { } season && Deadline is { } deadline
        ? LocalDate.Min(season, deadline)
        : LastDay ?? Deadline;

    /// <summary>The state of a day; unknown where nobody has looked for long.</summary>
    public DayState On(LocalDate day, Instant now) =>
        now - SeenAt <= TaskOutlook.LongestAge ? TaskOutlook.Read(FirstDay, States, day) : DayState.Unknown;

    public DayState Before(LocalDate day) => TaskOutlook.Read(BeforeFirstDay, BeforeStates, day);

    /// <summary>Whether its dates and the order of the work let it be done on a day.</summary>
    public bool IsDue(LocalDate day) => !Waits && !(NotBefore > day) && !(Deadline < day);

    /// <summary>Whether it may be done on a day.</summary>
    public bool MayBeDone(LocalDate day, Instant now) => IsDue(day) && On(day, now) is DayState.Open or DayState.Limited;
}

/// <summary>Reads the open tasks that the caller may see, with what was last said of them, in one query.</summary>
public sealed class OutlookReader(WorkWindowsDb db, VisibleTasks visible)
{
    /// <returns>By property, parcel and practice.</returns>
    public async Task<List<OutlookRow>> ReadAsync(CancellationToken cancellation)
    {
        var rows = await (
            from task in visible.All.AsNoTracking()
            where task.CompletedOn == null
            join outlook in db.TaskOutlooks.AsNoTracking() on task.Id equals outlook.TaskId into looked
            from outlook in looked.DefaultIfEmpty()
            select new OutlookRow
            {
                Id = task.Id,
                PracticeId = task.PracticeId,
                ParcelId = task.ParcelId,
                Parcel = task.Parcel.Name,
                PropertyId = task.Parcel.PropertyId,
                Property = task.Parcel.Property.Name,
                CountyFips = task.Parcel.Property.CountyFips,
                State = task.Parcel.Property.State,
                Owner = task.Parcel.Property.Landowner!.DisplayName,
                CrewSize = task.CrewSize,
                NotBefore = task.NotBefore,
                Deadline = task.Deadline,
                ScheduledOn = task.ScheduledOn,
                Waits = task.Prerequisites.Any(link =>
                    db.PlannedTasks.Any(first => first.Id == link.PrerequisiteId && first.CompletedOn == null)),
                SeenAt = outlook == null ? null : outlook.SeenAt,
                FirstDay = outlook == null ? null : outlook.FirstDay,
                States = outlook == null ? null : outlook.States,
                BeforeFirstDay = outlook == null ? null : outlook.BeforeFirstDay,
                BeforeStates = outlook == null ? null : outlook.BeforeStates,
                LastDay = outlook == null ? null : outlook.LastDay,
                ClosedBy = outlook == null ? null : outlook.ClosedBy,
            }).ToListAsync(cancellation);
        return
        [
            .. rows.OrderBy(row => row.Property, StringComparer.OrdinalIgnoreCase).ThenBy(row => row.PropertyId)
                .ThenBy(row => row.Parcel, StringComparer.OrdinalIgnoreCase).ThenBy(row => row.ParcelId)
                .ThenBy(row => row.Practice, StringComparer.Ordinal).ThenBy(row => row.Id),
        ];
    }

    /// <summary>Why the days of some tasks are as they are, by task.</summary>
    public Task<Dictionary<Guid, List<string>>> WhyAsync(IReadOnlyCollection<Guid> tasks, CancellationToken cancellation) =>
        db.TaskOutlooks.AsNoTracking().Where(outlook => tasks.Contains(outlook.TaskId))
            .ToDictionaryAsync(outlook => outlook.TaskId, outlook => outlook.Why, cancellation);
}
