using Microsoft.AspNetCore.Builder;
using Shouldly;
using WorkWindows.Service.Commands;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Commands;

public sealed class ServeTests
{
    [Theory]
    [InlineData("serve")]
    [InlineData("--urls=http://127.0.0.1:0")]
    public async Task Run_EndsWithTwo_WhenTheMachineIsNotSetUp(string argument) =>
        (await CommandLine.RunAsync([argument], Refuse)).ShouldBe(2);

    [Fact]
    public async Task Run_EndsWithTwo_WithoutServing_WhenTheCommandIsUnknown() =>
        (await CommandLine.RunAsync(["evalute"], _ => throw new UnreachedException())).ShouldBe(2);

    private static WebApplication Refuse(string[] arguments) => throw new SetupException("No programs.");

    private sealed class UnreachedException : Exception;
}
