using System.Collections.Immutable;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Benchmarks;

/// <summary>Tasks of every practice, in the states that have packs, with any species and flags.</summary>
internal static class GeneratedTask
{
    private static readonly string[] States = ["MI", "WI", "MN", "IA", "IL", "IN", "OH", "PA", "NY", "MO"];

    /// <summary>A task of the point of its number; the points lie in the states by turns.</summary>
    public static TaskFacts Of(int number, int points, Random random)
    {
        var practice = PracticeCatalogue.All[random.Next(PracticeCatalogue.All.Length)];
        ImmutableSortedSet<SpeciesGroup>? species = random.Next(5) == 0
            ? null
            : [(SpeciesGroup)random.Next(9), (SpeciesGroup)random.Next(9)];
        ImmutableSortedSet<SiteFlag> flags = [.. Enum.GetValues<SiteFlag>().Where(_ => random.Next(4) == 0)];
        return new($"T-{number}", practice, States[number % points % States.Length], "26065", species, flags)
        {
            Organization = "ours",
            Place = new(42.5 + random.NextDouble(), -85 + random.NextDouble()),
        };
    }
}
