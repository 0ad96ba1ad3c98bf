using WorkWindows.Engine.Calendars;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Rules;

public class RulePackReaderTests
{
    private const string Sound =
        """
        pack: test
        version: "1"
        title: A test pack
        states: [MI]
        rules:
          - id: cold.run
            title: Cold run
            effect: closes
            scope: { practices: [hinge-cut] }
            when: { signal: min-temperature, below: 20 degF, days-in-a-row: 3 }
            because: Frozen hinges break.
            authority: common-practice
            source: { title: "common practice, no source" }
        """;

    [Fact]
    public void Read_GivesTheRule()
    {
        var pack = RulePackReader.Read(Sound);

        var rule = Assert.Single(pack.Rules);
        Assert.Equal(new InARow(new(SignalKind.MinTemperatureC, Relation.Below, new(20, RuleUnit.DegF)), 3), rule.When);
        Assert.Equal("MI", Assert.Single(rule.Scope.States));
        Assert.Equal(Authority.CommonPractice, rule.Authority);
    }

    [Fact]
    public void Hash_IsTheSame_WithOtherLineEnds() =>
        Assert.Equal(RulePackReader.Read(Sound).Hash, RulePackReader.Read(Sound.ReplaceLineEndings("\r\n")).Hash);

    [Fact]
    public void Hash_IsAnother_WhenAnythingChanges() =>
        Assert.NotEqual(RulePackReader.Read(Sound).Hash, RulePackReader.Read(Sound.Replace("20 degF", "21 degF")).Hash);

    public static TheoryData<string, YearlyDate> Dates => new()
    {
        { "08-01", new FixedDate(8, 1) },
        { "02-29", new FixedDate(2, 29) },
        {
            "{ nth: 4, weekday: thursday, month: 11, plus-days: -5 }",
            new NthWeekday(4, NodaTime.IsoDayOfWeek.Thursday, 11) { PlusDays = -5 }
        },
        { "{ nearest: saturday, to: 11-06 }", new NearestWeekday(NodaTime.IsoDayOfWeek.Saturday, 11, 6) },
        { "{ first: saturday, on-or-after: 11-12 }", new WeekdayOnOrAfter(NodaTime.IsoDayOfWeek.Saturday, 11, 12) },
        {
            "{ event: leaf-out, not-before: 03-15, not-after: 06-15, plus-days: -1 }",
            new EventDate(SeasonEventKind.LeafOut, new(3, 15), new(6, 15)) { PlusDays = -1 }
        },
    };

    [Theory]
    [MemberData(nameof(Dates))]
    public void Read_GivesTheDate(string written, YearlyDate expected)
    {
        var pack = RulePackReader.Read(
            Sound.Replace(
                "{ signal: min-temperature, below: 20 degF, days-in-a-row: 3 }", $"calendar: {{ on: {written} }}")
                .Replace("when: calendar", "when:\n      calendar"));

        Assert.Equal(new InRange(new(expected, expected)), pack.Rules[0].When);
    }

    [Theory]
    [InlineData("effect: closes", "effect: forbids",
        "line 8, column 13: rules[0].effect is 'forbids'; accepted: closes, limits, favours, requires, lifts")]
    [InlineData("20 degF", "20 mph",
        "line 10, column 45: rules[0].when.below is '20 mph'; accepted: a number, a space and a unit (degF or degC)")]
    [InlineData("20 degF", "cold",
        "line 10, column 45: rules[0].when.below is 'cold'; accepted: a number, a space and a unit (degF or degC)")]
    [InlineData("[hinge-cut]", "[hinge]",
        "line 9, column 26: rules[0].scope.practices[0] is 'hinge'; accepted: overstory-felling, hinge-cut, re-cut, "
        + "tie-down, cleanup, trail-opening, timber-harvest, girdling, frill-herbicide, conifer-underplanting, "
        + "prescribed-burn")]
    [InlineData("days-in-a-row: 3", "days-in-a-row: 1",
        "line 10, column 69: rules[0].when.days-in-a-row is '1'; accepted: a whole number from 2 to 60")]
    [InlineData("    because: Frozen hinges break.\n", "",
        "line 6, column 5: rules[0].because is missing; accepted: one plain sentence")]
    [InlineData("states: [MI]", "states: [Michigan]",
        "line 4, column 10: states[0] is 'Michigan'; accepted: the postal code of a state such as MI")]
    [InlineData("title: A test pack", "name: A test pack",
        "line 1, column 1: title is missing; accepted: a few words for people")]
    [InlineData("effect: closes", "effect: limits",
        "line 6, column 5: rules[0].measure is missing; accepted: what must be done on such a day")]
    [InlineData("id: cold.run", "id: Cold Run",
        "line 6, column 9: rules[0].id is 'Cold Run'; accepted: lower-case letters, digits, hyphens and dots, such as "
        + "oak-wilt.high-risk")]
    public void Read_NamesLineKeyValueAndAcceptedForm(string sound, string broken, string expected)
    {
        var text = Sound.ReplaceLineEndings("\n");
        Assert.Contains(sound, text);

        var e = Assert.Throws<PackException>(() => RulePackReader.Read(text.Replace(sound, broken)));

        Assert.Contains(expected, e.Faults.Select(fault => fault.ToString()));
    }

    [Fact]
    public void Read_ListsEveryFault()
    {
        var text = Sound.Replace("effect: closes", "effect: forbids").Replace("20 degF", "20 K").Replace(
            "[MI]", "[mi]");

        Assert.Equal(3, Assert.Throws<PackException>(() => RulePackReader.Read(text)).Faults.Count);
    }

    [Fact]
    public void Read_RefusesASecondRuleOfTheSameId()
    {
        var rule = Sound[Sound.IndexOf("  - id", StringComparison.Ordinal)..];

        var e = Assert.Throws<PackException>(() => RulePackReader.Read($"{Sound}\n{rule}"));

        Assert.Equal("an id that no other rule of the pack has", Assert.Single(e.Faults).Accepted);
    }

    [Theory]
    [InlineData("")]
    [InlineData("pack: [")]
    [InlineData("pack: a\npack: b")]
    [InlineData("- a list")]
    public void Read_RefusesWhatIsNotAPack(string text) =>
        Assert.NotEmpty(Assert.Throws<PackException>(() => RulePackReader.Read(text)).Faults);

    [Theory]
    [InlineData("pack: house", PackLevel.National, "line 1, column 7: pack is 'house'; accepted: test")]
    [InlineData("pack: test", PackLevel.Organization,
        "line 1, column 1: level is missing; accepted: organization")]
    [InlineData("pack: test\nlevel: state", PackLevel.Organization,
        "line 2, column 8: level is 'state'; accepted: organization")]
    public void Read_RefusesAnotherPackThanTheOneExpected(string pack, PackLevel level, string expected)
    {
        var text = Sound.ReplaceLineEndings("\n").Replace("pack: test", pack).Replace("states: [MI]\n", "");

        var e = Assert.Throws<PackException>(() => RulePackReader.Read(text, [], new("test", level)));

        Assert.Equal(expected, Assert.Single(e.Faults, fault => fault.Key is "pack" or "level").ToString());
    }
}
