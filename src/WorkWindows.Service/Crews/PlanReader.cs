using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Planning.Cases;
using WorkWindows.Service.Prescriptions;
using WorkWindows.Service.Safety;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>What a plan is made of, and what is needed to speak of it.</summary>
/// <param name="Today">The day it is.</param>
/// <param name="Case">The case to plan.</param>
/// <param name="Tasks">Its tasks, by id.</param>
/// <param name="Crews">Its crews, by id.</param>
public sealed record PlanInput(
    LocalDate Today, PlanCase Case, IReadOnlyDictionary<Guid, TaskInput> Tasks, IReadOnlyDictionary<Guid, Crew> Crews);

/// <summary>Gathers tasks, chances, crews and drives into a case for the planner.</summary>
public sealed class PlanReader(
    WorkWindowsDb db, TaskEvaluator evaluator, TaskHours hours, WeekHandler week)
{
    private const double MetresPerFoot = 0.3048;

    /// <summary>Days from today on that must be known: nobody is sent out tomorrow on a chance.</summary>
    private const int KnownDays = 2;

    /// <param name="days">The days to plan; those before today are never workable.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<PlanInput> ReadAsync(DaySpan days, CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        var open = db.PlannedTasks.Where(task => task.CompletedOn == null);
        var inputs = await evaluator.ReadAsync(open, days, cancellation);
        var rows = await open.AsNoTracking().AsSplitQuery().Include(task => task.Prerequisites).Include(task => task.Parcel)
            .ToDictionaryAsync(task => task.Id, cancellation);
        var crews = await db.Crews.AsNoTracking().AsSplitQuery().Include(crew => crew.Members)
            .OrderBy(crew => crew.Name).ToListAsync(cancellation);
        var settings = await db.PlanningSettings.AsNoTracking().SingleOrDefaultAsync(cancellation) ?? new();
        var practices = await db.PracticeSettings.AsNoTracking()
            .ToDictionaryAsync(setting => setting.PracticeId, cancellation);
        var paces = await hours.PacesAsync(cancellation);
        var times = await hours.OfAsync(rows.Values, paces, cancellation);
        var rules = await db.FollowUpsAsync(cancellation);
        var doneToday = await DoneOnBookedDayAsync(rows, paces, today, cancellation);
        PlanTask[] tasks =
        [
            .. inputs.Select(input => TaskOf(
                input, rows[input.Task.Id], practices.GetValueOrDefault(input.Task.Practice.Id),
                times[input.Task.Id].LeftWith(doneToday[input.Task.Id].Sum()), Earliest(rows[input.Task.Id], rows, rules, today),
                days, today, rows.ContainsKey)),
        ];
        var absences = await db.Absences.AsNoTracking()
            .Where(row => row.LastDay >= days.First && row.FirstDay <= days.Last).ToListAsync(cancellation);
        return new(
            today,
            PlanCase.Of(
                new DateInterval(days.First, days.Last), [.. tasks], await CrewsAsync(crews, absences, paces, days, cancellation),
                await EquipmentAsync(absences, days, cancellation), await TravelAsync(crews, rows.Values, settings, cancellation),
                TooClose(inputs, rows, settings), await BookedAsync(days, isFixed: false, cancellation),
                await BookedAsync(days, isFixed: true, cancellation),
                new() { PointsPerTravelHour = settings.PointsPerTravelHour, PointsPerChange = settings.PointsPerChange }),
            inputs.ToDictionary(input => input.Task.Id), crews.ToDictionary(crew => crew.Id));
    }

    private static PlanTask TaskOf(
        TaskInput input, PlannedTask row, PracticeSetting? practice, double hoursLeft, LocalDate? notBefore, DaySpan days, LocalDate today,
        Func<Guid, bool> isOpen)
    {
        var evaluation = input.Evaluated().Evaluation;
        var chances = input.Weather.Chances.Ensemble.Years.IsEmpty ? null : input.ChancesOf(days);
        var people = Math.Max(row.CrewSize, CompanyRules.ForbidOnAnyDay(evaluation) ? 2 : 1);
        return new()
        {
            Id = $"{row.Id}",
            Place = $"{row.Parcel.PropertyId}",
            Practice = row.PracticeId,
            Hours = hoursLeft / people,
            CrewSize = people,
            Skills = [.. practice?.Certificates ?? []],
            EquipmentKinds = [.. practice?.EquipmentKinds ?? []],
            After = [.. row.Prerequisites.Where(link => isOpen(link.PrerequisiteId)).Select(link => $"{link.PrerequisiteId}")],
            NotBefore = notBefore,
            Deadline = row.Deadline,
            Benefit = TaskPoints.Of(row, practice),
            Chances = [.. Enumerable.Range(0, days.Count).Select(day => days[day]).Select(day => day < today
                ? null
                : evaluation[day] switch
                {
                    DayState.Open or DayState.Limited => 1,
                    DayState.Closed => null,
                    DayState.Unknown when day < today.PlusDays(KnownDays) => null,
                    DayState.Unknown => chances?[day].Share is > 0 and var share ? share : (double?)null,
                })],
        };
    }

    /// <summary>What follows work that is not done comes years after it, and its dates are set when that is done.</summary>
    private static LocalDate? Earliest(
        PlannedTask row, Dictionary<Guid, PlannedTask> open, ImmutableArray<FollowUp> rules, LocalDate today) =>
        row.FollowsId is { } id && open.TryGetValue(id, out var first)
        && rules.FirstOrDefault(rule => rule.After.Id == first.PracticeId && rule.Practice.Id == row.PracticeId) is { } rule
            ? LocalDate.Max(row.NotBefore ?? LocalDate.MinIsoValue, rule.Due(today).From)
            : row.NotBefore;

    /// <summary>
    /// Hours at the usual pace that were recorded today of work that is booked today, by task: the booking stands for them.
    /// </summary>
    private async Task<ILookup<Guid, double>> DoneOnBookedDayAsync(
        Dictionary<Guid, PlannedTask> open, Paces paces, LocalDate today, CancellationToken cancellation) =>
        (await db.WorkRecords
            .Where(record => record.Day == today && db.Bookings.Any(row => row.TaskId == record.TaskId && row.Day == today))
            .Select(record => new { record.TaskId, record.CrewId, record.PersonHours }).ToListAsync(cancellation))
        .Where(record => open.ContainsKey(record.TaskId))
        .ToLookup(
            record => record.TaskId,
            record => (double)record.PersonHours / paces.Of(record.CrewId, open[record.TaskId].PracticeId));

    private async Task<ImmutableArray<PlanCrew>> CrewsAsync(
        List<Crew> crews, List<Absence> absences, Paces paces, DaySpan days, CancellationToken cancellation)
    {
        var certificates = (await db.Certificates.AsNoTracking().OrderBy(held => held.Title).ToListAsync(cancellation))
            .ToLookup(held => held.PersonId, held => new PlanCertificate(held.Title, held.ValidUntil));
        return
        [
            .. crews.Select(crew => new PlanCrew
            {
                Id = $"{crew.Id}",
                Base = crew.BaseLatitude is null ? null : $"{crew.Id}",
                HoursPerDay = (double)crew.HoursPerDay,
                Members =
                [
                    .. crew.Members.OrderBy(member => member.PersonId).Select(member => new PlanMember
                    {
                        Id = $"{member.PersonId}",
                        Certificates = [.. certificates[member.PersonId]],
                        DaysOff = DaysOff(absences, days, row => row.PersonId == member.PersonId),
                    }),
                ],
                DaysOff = DaysOff(absences, days, row => row.CrewId == crew.Id),
                FirstDay = crew.FirstDay,
                LastDay = crew.LastDay,
                Paces = paces.Of(crew.Id).ToImmutableDictionary(own => own.PracticeId, own => own.Pace),
            }),
        ];
    }

    private async Task<ImmutableArray<PlanEquipment>> EquipmentAsync(
        List<Absence> absences, DaySpan days, CancellationToken cancellation) =>
    [
        .. (await db.Equipment.AsNoTracking().OrderBy(piece => piece.Name).ToListAsync(cancellation))
            .Select(piece => new PlanEquipment
            {
                Id = $"{piece.Id}",
                Kind = piece.Kind,
                CrewId = piece.CrewId is { } crew ? $"{crew}" : null,
                OutOfService = DaysOff(absences, days, row => row.EquipmentId == piece.Id),
            }),
    ];

    private async Task<TravelTimes> TravelAsync(
        List<Crew> crews, IEnumerable<PlannedTask> tasks, PlanningSetting settings, CancellationToken cancellation)
    {
        var places = tasks.Select(task => task.Parcel).DistinctBy(parcel => parcel.Id).GroupBy(parcel => parcel.PropertyId)
            .Select(parcels => new PlanPlace(
                $"{parcels.Key}", parcels.Average(parcel => parcel.Latitude), parcels.Average(parcel => parcel.Longitude)))
            .Concat(crews.Where(crew => crew.BaseLatitude is not null)
                .Select(crew => new PlanPlace($"{crew.Id}", crew.BaseLatitude!.Value, crew.BaseLongitude!.Value)));
        var matrix = await db.DriveTimes.AsNoTracking().ToListAsync(cancellation);
        return TravelTimes.Of(
            [.. places], [.. matrix.Select(drive => new KnownDrive($"{drive.FromId}", $"{drive.ToId}", drive.Minutes))],
            settings.RoadFactor, settings.RoadSpeedKmPerHour);
    }

    /// <summary>Tasks on one parcel, or on two that come closer than the spacing.</summary>
    private static ImmutableArray<TooClose> TooClose(
        IReadOnlyList<TaskInput> inputs, Dictionary<Guid, PlannedTask> rows, PlanningSetting settings)
    {
        var byParcel = inputs.Select(input => rows[input.Task.Id]).GroupBy(task => task.ParcelId).ToList();
        var parcels = byParcel.ConvertAll(tasks => tasks.First().Parcel);
        var close = ParcelSpacing.CloserThan(
            parcels.ConvertAll(parcel => new ParcelExtent(parcel.Latitude, parcel.Longitude, parcel.BoundaryGeoJson)),
            settings.SpacingFt * MetresPerFoot);
        var across = close.SelectMany(pair => byParcel[pair.First].SelectMany(
            _ => byParcel[pair.Second], (one, other) => new TooClose($"{one.Id}", $"{other.Id}")));
        var within = byParcel.SelectMany(tasks => tasks.SelectMany(
            (_, index) => tasks.Skip(index + 1), (one, other) => new TooClose($"{one.Id}", $"{other.Id}")));
        return [.. within, .. across];
    }

    private async Task<ImmutableArray<Planning.Cases.Booking>> BookedAsync(
        DaySpan days, bool isFixed, CancellationToken cancellation) =>
    [
        .. (await db.Bookings.AsNoTracking().AsSplitQuery().Include(row => row.People).Include(row => row.Equipment)
            .Where(row => row.IsFixed == isFixed && row.Day >= days.First && row.Day <= days.Last
                && row.Task.CompletedOn == null)
            .OrderBy(row => row.Day).ThenBy(row => row.CrewId).ThenBy(row => row.Place).ToListAsync(cancellation))
            .Select(PlanWords.Of),
    ];

    private static ImmutableArray<LocalDate> DaysOff(List<Absence> absences, DaySpan days, Func<Absence, bool> isOf) =>
    [
        .. Enumerable.Range(0, days.Count).Select(day => days[day])
            .Where(day => absences.Exists(row => isOf(row) && row.FirstDay <= day && row.LastDay >= day)),
    ];
}
