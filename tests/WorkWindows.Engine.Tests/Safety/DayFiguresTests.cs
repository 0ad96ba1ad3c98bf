using System.Collections.Immutable;
using NodaTime;
using Shouldly;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Safety;

/// <summary>
/// US National Weather Service, heat index equation: the regression is not appropriate for an index below 80 °F; wind
/// chill: defined at 50 °F or less.
/// </summary>
public sealed class DayFiguresTests
{
    private static readonly LocalDate Day = new(2026, 2, 1);

    [Theory]
    [InlineData(SignalKind.HeatIndexC, 80, "heat index: 80 °F (forecast)")]
    [InlineData(SignalKind.HeatIndexC, 79.9, null)]
    [InlineData(SignalKind.HeatIndexC, 31, null)]
    [InlineData(SignalKind.WindChillC, 50, "wind chill: 50 °F (forecast)")]
    [InlineData(SignalKind.WindChillC, 50.1, null)]
    [InlineData(SignalKind.WindChillC, 12.3, "wind chill: 12.3 °F (forecast)")]
    public void Lines_LeaveOutWhatTheWeatherServiceDoesNotDefine(SignalKind kind, double degF, string? line)
    {
        var name = Lines(Known(kind, degF)).Where(text => text.StartsWith(Name(kind), StringComparison.Ordinal));

        name.ShouldBe(line is null ? [] : [line]);
    }

    [Fact]
    public void Lines_LeaveTheSameOut_ForWhoeverReadsCelsius()
    {
        DayFigures.Lines(Known(SignalKind.HeatIndexC, 79.9), Day, TemperatureScale.Celsius)
            .ShouldNotContain(text => text.StartsWith("heat index", StringComparison.Ordinal));
        DayFigures.Lines(Known(SignalKind.HeatIndexC, 95), Day, TemperatureScale.Celsius)
            .ShouldContain("heat index: 35 °C (forecast)");
    }

    [Fact]
    public void Lines_SayOfWhatIsMissingThatItIsNotKnown_AndNeverLeaveItOut()
    {
        var lines = Lines(SignalSet.Of("test", new DaySpan(Day, 1), [], []));

        lines.ShouldContain("heat index: not known");
        lines.ShouldContain("wind chill: not known");
        lines.ShouldContain("gusts: not known");
    }

    private static string Name(SignalKind kind) => kind == SignalKind.HeatIndexC ? "heat index" : "wind chill";

    private static ImmutableArray<string> Lines(SignalSet signals) => DayFigures.Lines(signals, Day);

    private static SignalSet Known(SignalKind kind, double degF)
    {
        var span = new DaySpan(Day, 1);
        return SignalSet.Of(
            "test", span, [new Signal(kind, span, [(degF - 32) / 1.8], [Basis.Forecast])], []);
    }
}
