using Microsoft.AspNetCore.Builder;
using NodaTime;
using NodaTime.Testing;
using Shouldly;
using WorkWindows.Service.Commands;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Commands;

public sealed class ServeTests
{
    private static readonly FakeClock Clock = new(NodaConstants.UnixEpoch);

    [Theory]
    [InlineData("serve")]
    [InlineData("--urls=http://127.0.0.1:0")]
    public async Task Run_EndsWithTwo_WhenTheMachineIsNotSetUp(string argument) =>
        (await CommandLine.RunAsync([argument], Clock, Refuse)).ShouldBe(2);

    [Fact]
    public async Task Run_EndsWithTwo_WithoutServing_WhenTheCommandIsUnknown() =>
        (await CommandLine.RunAsync(["evalute"], Clock, _ => throw new UnreachedException())).ShouldBe(2);

    private static WebApplication Refuse(string[] arguments) => throw new SetupException("No programs.");

    private sealed class UnreachedException : Exception;
}
