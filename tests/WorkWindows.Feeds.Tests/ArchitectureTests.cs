using WorkWindows.Feeds.Stations;

namespace WorkWindows.Feeds.Tests;

public class ArchitectureTests
{
    [Fact]
    public void Feeds_KnowTheEngineAndReadersOnly()
    {
        string[] allowed =
            ["WorkWindows.Engine", "NodaTime", "CsvHelper", "NetTopologySuite", "Microsoft.Extensions", "Polly"];

        Assert.All(
            typeof(StationFile).Assembly.GetReferencedAssemblies(),
            reference => Assert.True(
                reference.Name!.StartsWith("System.", StringComparison.Ordinal)
                || allowed.Any(
                    name => reference.Name == name || reference.Name.StartsWith($"{name}.", StringComparison.Ordinal)),
                $"The feeds reference {reference.Name}."));
    }
}
