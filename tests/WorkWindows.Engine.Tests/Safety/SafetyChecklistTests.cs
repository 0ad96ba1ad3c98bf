using System.Collections.Immutable;
using System.Text;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using WorkWindows.Engine.Signals;

namespace WorkWindows.Engine.Tests.Safety;

public class SafetyChecklistTests
{
    private static readonly string[] Groups = ["saw", "felling", "machine", "herbicide", "fire"];

    [Theory]
    [InlineData("overstory-felling", 46, "saw felling fire")]
    [InlineData("hinge-cut", 47, "saw felling fire")]
    [InlineData("re-cut", 47, "saw felling fire")]
    [InlineData("tie-down", 20, "")]
    [InlineData("cleanup", 35, "saw fire")]
    [InlineData("trail-opening", 35, "saw fire")]
    [InlineData("timber-harvest", 47, "saw felling machine fire")]
    [InlineData("girdling", 35, "saw fire")]
    [InlineData("frill-herbicide", 21, "herbicide")]
    [InlineData("conifer-underplanting", 19, "")]
    [InlineData("prescribed-burn", 22, "fire")]
    public void For_ComposesTheListFromThePractice(string practice, int count, string groups)
    {
        var items = For(practice).Items;
        Assert.Equal(count, items.Length);
        Assert.Equal(
            groups.Split(' ', StringSplitOptions.RemoveEmptyEntries),
            Groups.Where(group => items.Any(item => item.Id.StartsWith($"{group}-", StringComparison.Ordinal))));
    }

    [Fact]
    public void For_CoversEveryPractice() =>
        Assert.All(PracticeCatalogue.All, practice => Assert.Contains(
            SafetyChecklist.For(new(practice)).Items, item => item.Id == "never-alone"));

    [Fact]
    public void For_ShowsASawUserTheRedFlagStop_ButNotThePrescription() =>
        Assert.Equal(
            ["fire-red-flag"],
            For("cleanup").Items.Select(item => item.Id).Where(id => id.StartsWith("fire-", StringComparison.Ordinal)));

    [Fact]
    public void For_OrdersByTodayWearCarryDoStop()
    {
        var asked = new SafetyItem(
            "mi.orange", "Wear orange.", SafetyItemKind.Today, new("Michigan DNR"), Authority.CommonPractice);
        var kinds = SafetyChecklist.For(Scene("timber-harvest") with { Asked = [asked] }).Items
            .Select(item => item.Kind).ToArray();
        Assert.Equal(kinds.Order(), kinds);
        Assert.Equal(Enum.GetValues<SafetyItemKind>(), kinds.Distinct());
    }

    /// <summary>Bands: OSHA heat index guide 91, 103, 115 °F (S); 80 °F is its proposed first trigger (S2).</summary>
    [Theory]
    [InlineData(null, null, "Heat index of 91 °F or more: drink 4 cups an hour")]
    [InlineData(null, 80.0, "Heat index of 91 °F or more: drink 4 cups an hour")]
    [InlineData(null, 79.9, null)]
    [InlineData(79.9, 85.0, null)]
    [InlineData(80.0, 85.0, "Heat index up to 91 °F, in the sun up to 15 °F more")]
    [InlineData(90.9, 88.0, "Heat index up to 91 °F, in the sun up to 15 °F more")]
    [InlineData(91.0, 88.0, "Heat index 91 to 103 °F: put heavy work off if you can.")]
    [InlineData(103.0, 92.0, "Heat index 103 to 115 °F: put the work off.")]
    [InlineData(115.0, 95.0, "Heat index 103 to 115 °F: put the work off.")]
    [InlineData(115.1, 95.0, "Heat index above 115 °F: do not work.")]
    public void Heat_SaysWhatTheDaysBandAsksFor(double? index, double? max, string? text) =>
        Says("heat", new() { HeatIndexF = index, MaxTempF = max }, text);

    /// <summary>30 min at about -18 °F: NWS chart (S2); 10 and 5 min at -32 and -48 °F from memory.</summary>
    [Theory]
    [InlineData(null, null, "Wind chill of -18 °F or less: bare skin freezes in 30 min.", false)]
    [InlineData(50.1, null, null, false)]
    [InlineData(50.0, null, "Wind chill of -18 °F or less: bare skin freezes in 30 min.", false)]
    [InlineData(20.0, 11.0, "Wind chill down to 10 °F: cover bare skin", false)]
    [InlineData(0.0, -17.9, "Wind chill down to -20 °F: cover bare skin", false)]
    [InlineData(0.0, -18.0, "Wind chill down to -20 °F: bare skin freezes in 30 min.", false)]
    [InlineData(-9.0, -32.0, "Wind chill down to -35 °F: bare skin freezes in 10 min.", true)]
    [InlineData(-9.0, -48.0, "Wind chill down to -50 °F: bare skin freezes in 5 min.", true)]
    public void Cold_SaysHowSoonBareSkinFreezes(double? min, double? chill, string? text, bool fromMemory)
    {
        Says("cold", new() { MinTempF = min, WindChillF = chill }, text);
        var item = In(new() { MinTempF = min, WindChillF = chill }).SingleOrDefault(item => item.Id == "cold");
        Assert.Equal(fromMemory, item?.FromMemory ?? false);
    }

    [Fact]
    public void Figures_AreSaidWhereTheyAreKnown_RoundedToTheSideOfMoreCare()
    {
        var figures = new DayFigures { WindMph = 11, GustMph = 20.1, SnowDepthIn = 2.5, DarkMinutes = 45 };

        Says("felling-wind", figures, "Wind to 15 mph, gusts to 25 mph. Stop felling if wind");
        Says("felling-look", figures, "Snow lies, up to 4 in. Before each cut look for people");
        Says("dark", figures, "45 min of the shift lie before sunrise or after sunset: no cutting then.");
    }

    [Fact]
    public void Figures_ThatAreMissing_LeaveTheGeneralForm()
    {
        Says("felling-wind", new() { WindMph = 11 }, "Stop felling if wind can turn the tree");
        Says("felling-wind", new() { GustMph = 11 }, "Stop felling if wind can turn the tree");
        Says("felling-look", new(), "Before each cut look for people");
        Says("felling-look", new() { SnowDepthIn = 0 }, "Before each cut look for people");
        Says("dark", new() { DarkMinutes = 0 }, "No cutting before sunrise or after sunset.");
    }

    [Theory]
    [InlineData(SiteFlag.SteepSlope, "felling-spacing", "Steep ground, where stems may roll or slide: keep more than two")]
    [InlineData(SiteFlag.PowerLine, "felling-power-line", "A power line is within reach of the trees: fell away from it.")]
    [InlineData(SiteFlag.WetGround, "wet-ground", "The ground is wet: try your footing")]
    public void Parcel_ChangesOrAddsAnItem(SiteFlag flag, string id, string text)
    {
        var item = SafetyChecklist.For(Scene("hinge-cut") with { SiteFlags = [flag] }).Items.Single(item => item.Id == id);
        Assert.StartsWith(text, item.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(For("hinge-cut").Items, other => other.Text == item.Text);
    }

    /// <summary>Seasons have one source, the rules of the packs, whose own cases hold their dates.</summary>
    [Theory]
    [InlineData("2026-03-31", "crew.contact mi.not-alone mi.clear-of-the-fall mi.stop-weather")]
    [InlineData("2026-04-01", "crew.ticks")]
    [InlineData("2026-11-15", "mi.blaze-orange crew.ticks")]
    [InlineData("2026-11-30", "mi.blaze-orange crew.ticks")]
    public void Scene_HasWhatRulesAskForOnTheDay_WithTheirSource(string day, string ids)
    {
        var (date, scene) = SceneOn(day);

        var asked = scene.Asked.Select(item => item.Id).ToList();
        Assert.All(ids.Split(' '), id => Assert.Contains(id, asked));
        Assert.Equal(date.Month is >= 4 and <= 11, asked.Contains("crew.ticks"));
        Assert.Equal(date.Month == 11, asked.Contains("mi.blaze-orange"));
        Assert.All(scene.Asked, item => Assert.True(item is { Kind: SafetyItemKind.Today, Source.Document.Length: > 0 }));
        Assert.Equal(asked, SafetyChecklist.For(scene).Items.Take(asked.Count).Select(item => item.Id));
    }

    [Fact]
    public void Scene_HasAnExceptionThatAPersonMade()
    {
        var (_, scene) = SceneOn("2026-11-15", new RuleOverride(
            "season.autumn", new(2026, 11, 1), new(2026, 11, 20), "Mara Holt", "Fenced orchard."));

        var item = Assert.Single(scene.Asked, item => item.Id == "season.autumn");
        Assert.EndsWith("by Mara Holt until 20 Nov 2026: Fenced orchard.", item.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Version_IsTheHashOfWhatIsShown_AndStaysForEver()
    {
        var list = new SafetyChecklist(PracticeCatalogue.Find("tie-down")!,
        [
            new("kit", "Look in:", SafetyItemKind.Carry, new("29 CFR 1910.266", "Appendix A"), Authority.Regulation)
            {
                Parts = ["tape", "-18 °F"],
            },
            new("look", "Look up.", SafetyItemKind.Do, SafetySource.None, Authority.CommonPractice, FromMemory: true),
        ]);

        Assert.Equal(
            """
            {"form":"checklist-1","practice":"tie-down","items":[
            {"id":"kit","text":"Look in:","parts":["tape","-18 \u00B0F"],"kind":"Carry",
            "source":"29 CFR 1910.266, Appendix A","authority":"Regulation","fromMemory":false},
            {"id":"look","text":"Look up.","parts":[],"kind":"Do",
            "source":"common practice, no source","authority":"CommonPractice","fromMemory":true}]}
            """.Replace("\n", "", StringComparison.Ordinal),
            Encoding.UTF8.GetString(list.Content.AsSpan()));
        Assert.Equal("667582e439a1c8cbc1995263ecc764f4d5fa846be47da46b7303c24e812cb4c7", list.Version);
    }

    [Fact]
    public void Version_IsTheSame_WhileAForecastMovesWithinAStep_AndAnotherWhenALineChanges()
    {
        string Of(double gust) => SafetyChecklist.For(
            Scene("hinge-cut") with { Figures = new() { WindMph = 8, GustMph = gust } }).Version;

        Assert.Equal(Of(16), Of(19.9));
        Assert.NotEqual(Of(19.9), Of(20.1));
        Assert.NotEqual(For("hinge-cut").Version, For("re-cut").Version);
    }

    [Fact]
    public void Usual_SaysWhatTheToolDoesNotDecide() =>
        Assert.Collection(
            Cautions.Usual,
            limit => Assert.Contains("not an order to cut", limit, StringComparison.Ordinal),
            codes => Assert.Contains("Local codes", codes, StringComparison.Ordinal),
            licence => Assert.Contains("licence", licence, StringComparison.Ordinal),
            doubt => Assert.Contains("If in doubt, stop", doubt, StringComparison.Ordinal));

    /// <summary>Felling in Michigan under the shipped packs, where nothing is known but the calendar.</summary>
    private static (LocalDate Day, SafetyScene Scene) SceneOn(string text, params RuleOverride[] overrides)
    {
        var day = NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;
        var facts = new TaskFacts("T-1", PracticeCatalogue.Find("overstory-felling")!, "MI", "26065", [], [])
        {
            Overrides = [.. overrides],
        };
        var evaluation = new PointRules(ShippedPacks.Read(), SignalSet.Of("test", new DaySpan(day, 1), [], []))
            .Evaluate(facts);
        return (day, SafetyScene.Of(evaluation, day));
    }

    private static void Says(string id, DayFigures figures, string? text)
    {
        var item = In(figures).SingleOrDefault(item => item.Id == id);
        Assert.Equal(text is null, item is null);
        if (text is not null)
            Assert.StartsWith(text, item!.Text, StringComparison.Ordinal);
        Assert.True(item is null || item.Text.Length <= 170);
    }

    private static ImmutableArray<SafetyItem> In(DayFigures figures) =>
        SafetyChecklist.For(Scene("hinge-cut") with { Figures = figures }).Items;

    private static SafetyChecklist For(string practice) => SafetyChecklist.For(Scene(practice));

    private static SafetyScene Scene(string practice) => new(PracticeCatalogue.Find(practice)!);
}
