using CsCheck;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Evaluation;

public class YearShiftTests
{
    // What closes or limits a day in the national packs and Michigan's names days of the month only, so that it has the
    // same dates every year; the two years are both of 365 days.
    private static readonly RulePack[] Packs =
        [.. ShippedPacks.Read().Where(pack => pack.Level == PackLevel.National || pack.Id == "mi")];

    private static readonly SignalKind[] Alerts =
    [
        SignalKind.RedFlagAlert, SignalKind.WindAlert, SignalKind.WinterStormAlert, SignalKind.ThunderstormAlert,
    ];

    [Fact]
    public void ShiftingAllInputsByAYear_ShiftsTheAnswer()
    {
        var values = Gen.OneOf(Gen.Double[-25, 30], Gen.Const(double.NaN)).Array[365];
        var practices = Gen.Int[0, PracticeCatalogue.All.Length - 1].Select(index => PracticeCatalogue.All[index].Id);

        Gen.Select(values, values, Gen.Int[75, 160], practices).Sample((minimaC, gustsMps, leafOut, practice) =>
        {
            var task = Given.Task(practice, species: [SpeciesGroup.RedOak], flags: SiteFlag.QuietOnDeerOpeners);
            string Year(int year) => Given.States([.. Packs], Signals(year, minimaC, gustsMps, leafOut), task);

            Assert.Equal(Year(2021), Year(2022));
        });
    }

    private static SignalSet Signals(int year, double[] minimaC, double[] gustsMps, int leafOut)
    {
        var first = new LocalDate(year, 1, 1);
        var span = new DaySpan(first, minimaC.Length);
        SeasonEvent[] events =
        [
            .. new[] { -1, 0, 1 }.Select(offset =>
                new SeasonEvent(SeasonEventKind.LeafOut, first.PlusYears(offset).PlusDays(leafOut), Basis.Observed)),
        ];
        return SignalSet.Of("test", span,
            [
                Given.Signal(SignalKind.MinTemperatureC, span, minimaC),
                Given.Signal(SignalKind.MaxTemperatureC, span, [.. minimaC.Select(value => value + 5)]),
                Given.Signal(SignalKind.GustMps, span, gustsMps),
                Given.Signal(SignalKind.WindMps, span, [.. gustsMps.Select(value => value / 2)]),
                Given.Signal(
                    SignalKind.DarkShiftMinutes, span, [.. minimaC.Select((_, day) => day % 3 * 20.0)], Basis.Calendar),
                .. Alerts.Select(kind => Given.Signal(kind, span, [.. minimaC.Select(_ => 0.0)], Basis.Alert)),
                Given.Signal(SignalKind.LightShiftMinutes, span, [.. minimaC.Select(_ => 400.0)], Basis.Calendar),
            ],
            events);
    }
}
