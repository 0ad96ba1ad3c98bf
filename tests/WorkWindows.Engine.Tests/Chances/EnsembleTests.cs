using NodaTime;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Signals;
using WorkWindows.Engine.Tests.Weather;
using WorkWindows.Engine.Weather;

namespace WorkWindows.Engine.Tests.Chances;

public class EnsembleTests
{
    private static readonly LocalDate LastObserved = new(2014, 2, 10);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/Chicago"];
    private static readonly WeatherPoint Point = new("Urbana", 40.08, -88.24);
    private static readonly DaySpan Span = DaySpan.Between(new(2014, 1, 20), new(2014, 12, 31));

    [Fact]
    public void Of_LeavesWhatIsKnownAsItIs_AndContinuesIt()
    {
        var observed = Until(LastObserved);
        var known = Signals(observed, null);

        var ensemble = Ensemble.Of(new(observed), known, null, Point.LatitudeDeg);

        Assert.Equal([.. Enumerable.Range(1985, 29).Reverse()], ensemble.Years);
        foreach (var member in ensemble.Members)
        {
            for (var day = 0; day < Span.Count; day++)
            {
                var (min, before) = (member[SignalKind.MinTemperatureC]!, known[SignalKind.MinTemperatureC]!);
                if (Span[day] <= LastObserved)
                    Assert.Equal((before.Values[day], before.Bases[day]), (min.Values[day], min.Bases[day]));
                else if (!double.IsNaN(min.Values[day]))
                    Assert.Equal(Basis.Climatology, min.Bases[day]);
            }
            Assert.Same(known[SignalKind.LightShiftMinutes], member[SignalKind.LightShiftMinutes]);
        }
    }

    [Fact]
    public void Of_LetsThePastYearTakeOverWithoutAJump()
    {
        // Every year its own temperature, the same all year: a departure never fades from one day to the next.
        var readings = SteadyRecord.Of(
            DaySpan.Between(new(1990, 1, 1), new(2014, 2, 10)), date => date.Year == 2014 ? -20 : date.Year - 2000);
        var observed = DailySeries.Of(readings);

        var ensemble = Ensemble.Of(new(observed), Signals(observed, null), null, Point.LatitudeDeg);

        // The correlation over the year is a little below one, since years differ at New Year.
        var member = ensemble.Members[ensemble.Years.IndexOf(2010)][SignalKind.MinTemperatureC]!;
        Assert.Equal(-25, member.Values[Span.IndexOf(LastObserved)]);
        Assert.Equal(-25, member.Values[Span.IndexOf(LastObserved) + 1], 1.0);
        Assert.True(member.Values[^1] > member.Values[Span.IndexOf(LastObserved) + 1]);
    }

    [Fact]
    public void Of_PutsThePastYearAfterTheForecast()
    {
        var observed = Until(LastObserved);
        var forecast = new Forecast(Instant.FromUtc(2014, 2, 10, 12, 0), DailySeries.Of(
            SteadyRecord.Of(DaySpan.Between(new(2014, 2, 11), new(2014, 2, 17)), _ => 15)));

        var ensemble = Ensemble.Of(new(observed), Signals(observed, forecast), forecast, Point.LatitudeDeg);

        Assert.All(ensemble.Members, member =>
        {
            var max = member[SignalKind.MaxTemperatureC]!;
            Assert.Equal(20, max.Values[Span.IndexOf(new(2014, 2, 17))]);
            Assert.Equal(Basis.Forecast, max.Bases[Span.IndexOf(new(2014, 2, 17))]);
            Assert.Equal(Basis.Climatology, max.Bases[Span.IndexOf(new(2014, 2, 18))]);
        });
    }

    [Fact]
    public void Of_ReadsWholeDegreesFahrenheit_WhenTheStationDoes()
    {
        var observed = Until(LastObserved);

        var ensemble = Ensemble.Of(new(observed), Signals(observed, null), null, Point.LatitudeDeg);

        Assert.All(ensemble.Members.SelectMany(member => member[SignalKind.MinTemperatureC]!.Values), tempC =>
            Assert.True(double.IsNaN(tempC) || Math.Abs(tempC * 1.8 - Math.Round(tempC * 1.8)) < 1e-6, $"{tempC} °C"));
    }

    [Fact]
    public void Of_KeepsMinimaAtOrBelowMaxima() => Assert.All(
        Ensemble.Of(new(Until(LastObserved)), Signals(Until(LastObserved), null), null, Point.LatitudeDeg).Members,
        member => Assert.DoesNotContain(
            member[SignalKind.MinTemperatureC]!.Values.Zip(member[SignalKind.MaxTemperatureC]!.Values),
            pair => pair.First > pair.Second));

    [Fact]
    public void Of_Fills29February_FromThe28thOfACommonYear()
    {
        var readings = SteadyRecord.Of(
            DaySpan.Between(new(1990, 1, 1), new(2016, 2, 10)), date => date is { Month: 2, Day: 28 } ? 7 : 0);
        var observed = DailySeries.Of(readings);
        var span = DaySpan.Between(new(2016, 2, 1), new(2016, 3, 10));

        var ensemble = Ensemble.Of(new(observed), Signals(observed, null, span), null, Point.LatitudeDeg);

        Assert.Equal(2, Mean(2015, new(2016, 2, 28)) - Mean(2015, new(2016, 2, 27)), 5.1);
        Assert.Equal(Mean(2015, new(2016, 2, 28)), Mean(2015, new(2016, 2, 29)), 0.5);
        Assert.Equal(0, Mean(2012, new(2016, 2, 29)), 0.5);
        Assert.Equal(0, Mean(2015, new(2016, 3, 1)), 0.5);

        double Mean(int year, LocalDate date)
        {
            var member = ensemble.Members[ensemble.Years.IndexOf(year)];
            var day = span.IndexOf(date);
            return (member[SignalKind.MinTemperatureC]!.Values[day] + member[SignalKind.MaxTemperatureC]!.Values[day]) / 2;
        }
    }

    [Fact]
    public void Of_IsNone_WithFewerThanFifteenYears()
    {
        var observed = DailySeries.Of(ReferenceStations.WithRain("USC00118740")
            .Where(reading => reading.Date >= new LocalDate(2000, 2, 1) && reading.Date <= LastObserved), true);

        var ensemble = Ensemble.Of(new(observed), Signals(observed, null), null, Point.LatitudeDeg);

        Assert.Equal((0, 0, 14), (ensemble.Years.Length, ensemble.Members.Length, ensemble.UsableYears));
    }

    [Fact]
    public void Of_StillTellsWhatPastYearsBrought_WhenTheRecordHasEndedLongAgo()
    {
        var observed = ReferenceStations.Urbana;
        var span = DaySpan.Between(new(2026, 2, 1), new(2026, 12, 31));

        var ensemble = Ensemble.Of(new(observed), Signals(observed, null, span), null, Point.LatitudeDeg);

        Assert.Equal((29, 2013), (ensemble.Years.Length, ensemble.Years[0]));
        var member = ensemble.Members[0][SignalKind.MaxTemperatureC]!;
        // The winter of 2013 to 2014 follows June: 37 °F on 1 February, and nothing is known that could move it.
        Assert.Equal(observed[DailyElement.MaxTemperatureC]![new(2014, 2, 1)], member.Values[0], 0.06);
    }

    [Fact]
    public void Of_IsNone_WithoutARecord() => Assert.Equal(
        Ensemble.None,
        Ensemble.Of(new(DailySeries.Empty), Signals(DailySeries.Empty, null), null, Point.LatitudeDeg));

    [Fact]
    public void On_MovesLeafOutAsFarAsThePropertyLiesFromThePlace_AndKeepsTheOneSeen()
    {
        var observed = Until(LastObserved);
        var place = Signals(observed, null);
        var told = place.Event(SeasonEventKind.LeafOut, 2014)!;
        var ensemble = Ensemble.Of(new(observed), place, null, Point.LatitudeDeg);
        var later = place.With([told with { Date = told.Date.PlusDays(6) }]);
        var seen = new SeasonEvent(SeasonEventKind.LeafOut, new(2014, 5, 3), Basis.SiteObservation);

        var moved = ensemble.On(place, later, []);
        var certain = ensemble.On(place, place.With([seen]), []);

        Assert.Equal(
            ensemble.Members.Select(member => member.Event(SeasonEventKind.LeafOut, 2014)!.Date.PlusDays(6)),
            moved.Members.Select(member => member.Event(SeasonEventKind.LeafOut, 2014)!.Date));
        Assert.All(certain.Members, member => Assert.Equal(seen, member.Event(SeasonEventKind.LeafOut, 2014)));
    }

    private static DailySeries Until(LocalDate last) => DailySeries.Of(
        ReferenceStations.WithRain("USC00118740").Where(reading => reading.Date <= last), readsUsUnits: true);

    private static SignalSet Signals(DailySeries observed, Forecast? forecast, DaySpan? span = null) =>
        SignalSetBuilder.Build(Point, span ?? Span, observed, forecast, Zone, WorkShift.Default, AlertReport.None);
}
