using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Tests.Crews;

/// <summary>Small cases: given by hand, or drawn by a seed.</summary>
internal static class GivenCase
{
    public static readonly LocalDate Monday = new(2027, 2, 1);

    private static readonly ImmutableArray<PlanPlace> Places =
    [
        new("base", 43.0, -84.5), new("ash", 43.1, -84.5), new("birch", 43.1, -84.3), new("cedar", 42.8, -84.7),
    ];

    public static PlanMember Member(string id, params PlanCertificate[] held) => new() { Id = id, Certificates = [.. held] };

    public static PlanCrew Crew(string id, params PlanMember[] members) => new()
    {
        Id = id,
        Base = "base",
        HoursPerDay = 8,
        Members = members.Length > 0 ? [.. members] : [Member($"{id}1"), Member($"{id}2")],
    };

    /// <summary>A task at Ash, two people, worth its hours.</summary>
    /// <param name="id">Its name.</param>
    /// <param name="hours">Hours of a crew.</param>
    /// <param name="days">A letter a day: w surely workable, h in half the years, - never.</param>
    public static PlanTask Task(string id, double hours, string days) => new()
    {
        Id = id,
        Place = "ash",
        Hours = hours,
        CrewSize = 2,
        Benefit = hours * 10,
        Chances = [.. days.Select(day => day switch { 'w' => 1, 'h' => 0.5, _ => (double?)null })],
    };

    public static PlanCase Of(IEnumerable<PlanTask> tasks, params PlanCrew[] crews)
    {
        ImmutableArray<PlanTask> given = [.. tasks];
        return PlanCase.Of(
            new(Monday, Monday.PlusDays(given[0].Chances.Length - 1)), given, [.. crews], [], Travel(), [], [], [], new());
    }

    public static TravelTimes Travel(params KnownDrive[] known) => TravelTimes.Of(Places, known, 1.3, 60);

    /// <summary>A case that has a bit of everything.</summary>
    public static PlanCase Drawn(int seed, int mostTasks, int mostCrews, int mostDays)
    {
        var random = new Random(seed);
        var days = random.Next(2, mostDays + 1);
        var crews = Enumerable.Range(0, random.Next(1, mostCrews + 1)).Select(index => DrawnCrew(random, index, days)).ToArray();
        var tasks = new List<PlanTask>();
        for (var index = random.Next(1, mostTasks + 1); index > 0; index--)
            tasks.Add(DrawnTask(random, tasks, days));
        PlanEquipment[] equipment =
        [
            new() { Id = "w1", Kind = "winch", OutOfService = random.Next(3) == 0 ? [Monday] : [] },
            new() { Id = "w2", Kind = "winch", CrewId = crews[0].Id },
        ];
        var close = tasks.SelectMany((_, index) => tasks.Skip(index + 1), (one, other) => new TooClose(one.Id, other.Id))
            .Where(_ => random.Next(3) == 0).ToImmutableArray();
        var open = PlanCase.Of(
            new(Monday, Monday.PlusDays(days - 1)), [.. tasks], [.. crews], [.. equipment.Take(random.Next(3))], Travel(),
            close, [], [], new());
        var booked = tasks.Where(_ => random.Next(4) == 0).Select(task => new Booking(
            task.Id, crews[random.Next(crews.Length)].Id, Monday.PlusDays(random.Next(days)), task.Hours / 2)).ToList();
        var set = tasks.Where(_ => random.Next(5) == 0).Select(task => Set(random, open, task, days));
        return open with { Announced = [.. booked], Fixed = [.. set] };
    }

    /// <summary>Work that somebody has put on a day, whatever else that breaks.</summary>
    private static Booking Set(Random random, PlanCase open, PlanTask task, int days)
    {
        var (crew, day) = (open.Crews[random.Next(open.Crews.Length)], Monday.PlusDays(random.Next(days)));
        var moved = random.Next(4) == 0;
        return new(task.Id, crew.Id, day, Math.Min(task.Hours, random.Next(100, 500) / 100.0))
        {
            // Whoever was of the crew then may be of another by now, and a machine may be out of service.
            Members = [.. moved ? ["p0", "p1"] : crew.Present(day).Select(member => member.Id)],
            EquipmentIds = [.. open.Equipment.Where(_ => random.Next(3) == 0).Select(piece => piece.Id)],
        };
    }

    private static PlanCrew DrawnCrew(Random random, int index, int days) => new()
    {
        Id = $"c{index}",
        Base = random.Next(5) == 0 ? null : "base",
        HoursPerDay = random.Next(4, 10),
        Paces = random.Next(2) == 0 ? new Dictionary<string, double> { ["felling"] = random.Next(5, 21) / 10.0 }.ToImmutableDictionary() : [],
        Members =
        [
            .. Enumerable.Range(0, 5).Where(_ => random.Next(2) == 0).Select(person => new PlanMember
            {
                Id = $"p{person}",
                Certificates = random.Next(2) == 0 ? [new("first aid", Monday.PlusDays(random.Next(days)))] : [],
                DaysOff = random.Next(3) == 0 ? [Monday.PlusDays(random.Next(days))] : [],
            }),
        ],
        DaysOff = random.Next(4) == 0 ? [Monday.PlusDays(random.Next(days))] : [],
        FirstDay = random.Next(5) == 0 ? Monday.PlusDays(random.Next(days)) : null,
        LastDay = random.Next(5) == 0 ? Monday.PlusDays(random.Next(days)) : null,
    };

    private static PlanTask DrawnTask(Random random, List<PlanTask> before, int days) => new()
    {
        Id = $"t{before.Count}",
        Place = Places[random.Next(1, Places.Length)].Id,
        Hours = random.Next(1, 31) / 2.0,
        Practice = random.Next(2) == 0 ? "felling" : null,
        CrewSize = random.Next(1, 4),
        Skills = random.Next(4) == 0 ? ["first aid"] : [],
        EquipmentKinds = random.Next(4) == 0 ? ["winch"] : [],
        After = [.. before.Where(_ => random.Next(5) == 0).Select(task => task.Id)],
        NotBefore = random.Next(6) == 0 ? Monday.PlusDays(random.Next(days)) : null,
        Deadline = random.Next(6) == 0 ? Monday.PlusDays(random.Next(days)) : null,
        Benefit = random.Next(0, 60),
        Chances = [.. Enumerable.Range(0, days).Select(_ => random.Next(4) == 0 ? (double?)null : random.Next(0, 11) / 10.0)],
    };
}
