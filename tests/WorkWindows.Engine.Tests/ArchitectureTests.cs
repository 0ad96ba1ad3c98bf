using NetArchTest.Rules;

namespace WorkWindows.Engine.Tests;

public class ArchitectureTests
{
    [Fact]
    public void Engine_ReferencesOnlyItsAllowedPackages() =>
        Assert.All(
            typeof(EngineVersion).Assembly.GetReferencedAssemblies(),
            reference => Assert.True(
                reference.Name!.StartsWith("System.", StringComparison.Ordinal)
                || reference.Name is "NodaTime" or "UnitsNet" or "YamlDotNet",
                $"The engine references {reference.Name}."));

    [Fact]
    public void Engine_TouchesNoFileNetworkOrClock()
    {
        string[] forbidden =
        [
            "System.IO.File", "System.IO.FileStream", "System.IO.Directory", "System.Net", "System.Diagnostics.Process",
            "System.Diagnostics.Stopwatch", "System.Random", "NodaTime.SystemClock",
            "System.TimeProvider",
        ];

        var result = Types.InAssembly(typeof(EngineVersion).Assembly)
            .ShouldNot().HaveDependencyOnAny(forbidden).GetResult();

        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypes?.Select(type => type.FullName) ?? []));
    }
}
