using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Benchmarks;

/// <summary>A large invented season: crews around their bases, properties with a few tasks each, days that come and go.</summary>
internal static class GeneratedSeason
{
    private const int TasksPerProperty = 3;

    public static PlanCase Of(int tasks, int crews, int days, int seed = 1)
    {
        var random = new Random(seed);
        var first = new LocalDate(2027, 1, 20);
        PlanPlace[] bases = [.. Enumerable.Range(0, crews).Select(crew => Near(random, $"base{crew}", 42.5, -85.0, 1.2))];
        PlanPlace[] properties =
        [
            .. Enumerable.Range(0, tasks / TasksPerProperty).Select(index =>
                Near(random, $"property{index}", bases[index % crews].LatitudeDeg, bases[index % crews].LongitudeDeg, 0.5)),
        ];
        double?[][] weather = [.. bases.Select(_ => Weather(random, days))];
        var made = new List<PlanTask>();
        for (var index = 0; index < tasks; index++)
        {
            var property = index / TasksPerProperty;
            made.Add(new()
            {
                Id = $"t{index}",
                Place = properties[property % properties.Length].Id,
                Hours = random.Next(4, 48) / 2.0,
                CrewSize = random.Next(2, 4),
                Skills = random.Next(4) == 0 ? ["herbicide"] : [],
                EquipmentKinds = random.Next(5) == 0 ? ["winch"] : [],
                After = index % TasksPerProperty > 0 && random.Next(2) == 0 ? [$"t{index - 1}"] : [],
                Deadline = random.Next(3) == 0 ? first.PlusDays(random.Next(days / 3, days)) : null,
                Benefit = random.Next(10, 200),
                Chances = [.. weather[property % crews].Select(chance => random.Next(6) == 0 ? null : chance)],
            });
        }
        var close = made.Chunk(TasksPerProperty).SelectMany(group => group.SelectMany(
            (_, index) => group.Skip(index + 1), (one, other) => new TooClose(one.Id, other.Id)));
        return PlanCase.Of(
            new(first, first.PlusDays(days - 1)), [.. made], [.. Enumerable.Range(0, crews).Select(crew => Crew(random, crew))],
            [.. Enumerable.Range(0, 4).Select(piece => new PlanEquipment { Id = $"w{piece}", Kind = "winch" })],
            TravelTimes.Of([.. bases, .. properties], [], 1.3, 60), [.. close], [], [], new());
    }

    private static PlanCrew Crew(Random random, int index) => new()
    {
        Id = $"crew{index}",
        Base = $"base{index}",
        HoursPerDay = 8,
        Members =
        [
            .. Enumerable.Range(0, random.Next(2, 5)).Select(member => new PlanMember
            {
                Id = $"m{index}-{member}",
                Certificates = random.Next(2) == 0 ? [new("herbicide", null)] : [],
            }),
        ],
    };

    private static PlanPlace Near(Random random, string id, double latitude, double longitude, double degrees) => new(
        id, latitude + (random.NextDouble() - 0.5) * degrees, longitude + (random.NextDouble() - 0.5) * degrees);

    /// <summary>Spells of closed days between spells whose chance drifts.</summary>
    private static double?[] Weather(Random random, int days)
    {
        var chances = new double?[days];
        for (var day = 0; day < days;)
        {
            var (length, chance) = (random.Next(1, 6), random.Next(3) == 0 ? (double?)null : random.Next(4, 11) / 10.0);
            for (; length > 0 && day < days; length--, day++)
                chances[day] = chance;
        }
        return chances;
    }
}
