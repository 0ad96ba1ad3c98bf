using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Safety;
using static WorkWindows.Engine.Practices.PracticeTraits;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Tests.Safety;

public class SafetyItemTests
{
    private const string Osha = "29 CFR 1910.266, ";
    private const string Michigan = "Michigan Administrative Code, ";
    private const string NoSource = "common practice, no source";
    private const string ForestService = "USDA Forest Service, FSH 6709.11";

    /// <summary>
    /// Every item: its kind, the traits it goes with, words that its text must say, its document and paragraph, and how
    /// that was seen: S read in the source, S2 quoted by another text, M in part from memory, - nobody has published it.
    /// </summary>
    public static TheoryData<string, SafetyItemKind, PracticeTraits, string, string, string> Items => new()
    {
        { "gear-check", Wear, None, "before first use", Osha + "(d)(1)(i)-(ii)", "S" },
        { "hard-hat", Wear, None, "ANSI/ISEA Z89.1", Osha + "(d)(1)(vi)", "M" },
        { "eyes", Wear, None, "ANSI/ISEA Z87.1", Osha + "(d)(1)(vii)", "S" },
        { "boots", Wear, None, "cover the ankle", Osha + "(d)(1)(v)", "S2" },
        { "saw-face", Wear, ChainSaw, "mesh screen", Osha + "(d)(1)(vii)", "S" },
        { "saw-ears", Wear, ChainSaw, "30 min", "29 CFR 1910.95, Table G-16", "S2" },
        { "saw-legs", Wear, ChainSaw, "ASTM F1897 or F3325", Osha + "(d)(1)(iv)", "S" },
        { "saw-boots", Wear, ChainSaw, "cut-resistant boots", Osha + "(d)(1)(v)", "M" },
        { "saw-gloves", Wear, ChainSaw, "gloves", ForestService, "S" },
        { "saw-sleeves", Wear, ChainSaw, "long sleeves", ForestService, "S" },
        { "first-aid-kit", Carry, None, "ANSI/ISEA Z308.1", Osha + "(d)(2)(i)", "S" },
        { "first-aid-size", Carry, None, "two or three people", Osha + "Appendix A", "S" },
        { "help-directions", Carry, None, "written directions", Osha + "Appendix A", "S" },
        { "first-aid-training", Do, None, "first aid and CPR", Osha + "(i)(7)(i)-(ii)", "S" },
        { "never-alone", Do, None, "sight or hearing", Osha + "(d)(6)(iii)", "S" },
        { "danger-trees", Do, None, "two tree lengths", Osha + "(h)(1)(vi)", "S" },
        { "heat", Do, None, "91 °F", "OSHA, using the heat index", "S" },
        { "head-count", Do, None, "end of the shift", Osha + "(d)(6)(iv)", "M" },
        { "saw-signals", Do, ChainSaw, "not contact", Osha + "(d)(7)(i)", "S" },
        { "saw-check", Do, ChainSaw, "chain tension", Osha + "(e)(2)(ii)", "S" },
        { "saw-brake", Do, ChainSaw, "working chain brake", Osha + "(e)(2)(i)", "S" },
        { "saw-fuelling", Do, ChainSaw, "10 ft", Osha + "(e)(2)(iv)", "S" },
        { "saw-starting", Do, ChainSaw, "10 ft", Osha + "(e)(2)(v)-(vii)", "S" },
        { "saw-grip", Do, ChainSaw, "both hands", "Washington Administrative Code, WAC 296-45-295", "S" },
        { "saw-carrying", Do, ChainSaw, "50 ft", Osha + "(e)(2)", "M" },
        { "saw-bucking", Do, ChainSaw, "uphill side", "North Carolina DOL, tree harvesting", "S" },
        { "felling-spacing", Do, FellsTrees, "two tree lengths between crews", Osha + "(d)(6)(i)-(ii)", "M" },
        { "felling-approach", Do, FellsTrees, "two tree lengths from a feller", Osha + "(h)(1)", "S" },
        { "felling-look", Do, FellsTrees, "snow and ice", Michigan + "R 408.15151(2)", "S" },
        { "felling-danger-tree", Do, FellsTrees, "two tree lengths off", Osha + "(h)(1)(vi)", "S" },
        { "felling-retreat", Do, FellsTrees, "diagonally", Osha + "(h)(2)(i)", "S" },
        { "felling-leave", Do, FellsTrees, "as soon as", Osha + "(h)(2)(ii)", "S" },
        { "felling-undercut", Do, FellsTrees, "Undercut", Osha + "(h)(2)(v)", "S" },
        { "felling-backcut", Do, FellsTrees, "enough hinge", Osha + "(h)(2)(vi)-(vii)", "S" },
        { "felling-half-cut", Do, FellsTrees, "half-cut stem", Osha + "(h)(1)(vi), read for hinge cutting", "-" },
        { "machine-distance", Do, MachineOnSoil, "two tree lengths", Osha + "(h)(1)", "S" },
        { "herbicide-label", Do, Herbicide, "label", "Label practice", "M" },
        { "herbicide-frozen", Do, Herbicide, "above freezing", "Label practice", "M" },
        { "fire-prescription", Do, Fire, "2-15 mph", "Prescribed fire, extension.org", "S" },
        { "fire-front", Do, Fire, "12 h", "Oklahoma State University Extension, E-1010", "S" },
        { "stop-weather", Stop, None, "high wind", Osha + "(d)(5)", "S" },
        { "stop-lightning", Stop, None, "30 min", "Texas DWC, OSHA/NOAA FS-3863, 30-30 rule", "S" },
        { "felling-power-line", Stop, FellsTrees, "utility", Michigan + "R 408.15151(4)", "S" },
        { "felling-wind", Stop, FellsTrees, "hides your view", Michigan + "R 408.15117", "S" },
        { "fire-red-flag", Stop, Fire | ChainSaw, "sparks", "US National Weather Service, Red Flag Warnings", "S2" },
        { "training", Do, None, "trained for this work", Osha + "(i)(3)", "M" },
        { "training-insects", Do, None, "ticks", Osha + "(i)(3)(iv)", "S" },
        { "first-aid-contents", Carry, None, "at least:", Osha + "Appendix A", "S" },
        { "cold", Do, None, "freezes in 30 min", "US National Weather Service, wind chill chart, 2001", "S2" },
        { "wet-ground", Do, None, "footing", NoSource, "-" },
        { "dark", Stop, None, "sunrise", Osha + "(d)(5)", "S" },
        { "hearing-programme", Wear, ChainSaw, "85 dBA", "29 CFR 1910.95, (c)(1)", "S" },
        { "hinged-tension", Do, None, "under tension", NoSource, "-" },
    };

    [Theory]
    [MemberData(nameof(Items))]
    public void AllItems_StateEachDutyWithItsSource(
        string id, SafetyItemKind kind, PracticeTraits traits, string words, string source, string seen)
    {
        var item = Assert.Single(SafetyChecklist.AllItems, item => item.Id == id);
        Assert.Equal((kind, traits, source), (item.Kind, item.Traits, item.Source.ToString()));
        Assert.Contains(words, item.Text, StringComparison.Ordinal);
        Assert.Equal(seen == "M", item.FromMemory);
        Assert.Equal(seen == "-", item.Authority == Authority.CommonPractice && !item.FromMemory);
    }

    [Fact]
    public void Page_NamesEachItem_WithItsParagraph_AndHowItWasSeen()
    {
        var page = File.ReadAllLines(Path.Combine(ProjectFiles.Root, "docs", "rules", "checklist.md"));
        Assert.All(Items.Select(row => row.Data), item =>
        {
            var (id, _, _, _, source, seen) = item;
            var cells = page.First(line => line.StartsWith($"| `{id}` |", StringComparison.Ordinal)).Split('|');
            if (source.StartsWith(Osha, StringComparison.Ordinal))
                Assert.Contains(source[Osha.Length..].Replace('-', '–').Split(", read")[0], cells[3], StringComparison.Ordinal);
            Assert.Equal(seen, cells[4].Trim().Split([' ', ',', ';'])[0]);
        });
    }

    [Theory]
    [InlineData("gauze pads, at least 4 x 4 in")]
    [InlineData("two large gauze pads, at least 8 x 10 in")]
    [InlineData("a box of adhesive bandages")]
    [InlineData("one gauze roller bandage, at least 2 in wide")]
    [InlineData("two triangular bandages")]
    [InlineData("wound wipes")]
    [InlineData("scissors")]
    [InlineData("a blanket")]
    [InlineData("tweezers")]
    [InlineData("adhesive tape")]
    [InlineData("gloves")]
    [InlineData("a device for resuscitation")]
    [InlineData("two elastic wraps")]
    [InlineData("a splint")]
    [InlineData("written directions for calling help")]
    public void FirstAidContents_NamesTheLinesOfAppendixA(string line)
    {
        var parts = SafetyChecklist.AllItems.Single(item => item.Id == "first-aid-contents").Parts;
        Assert.Equal(15, parts.Length);
        Assert.Contains(line, parts);
    }

    [Fact]
    public void AllItems_AreTheseAndNoOthers() =>
        Assert.Equal(
            Items.Select(row => row.Data.Item1).Order(StringComparer.Ordinal),
            SafetyChecklist.AllItems.Select(item => item.Id).Order(StringComparer.Ordinal));

    [Fact]
    public void Text_FitsAPhone_AndIsWholeSentences() =>
        Assert.All(SafetyChecklist.AllItems, item =>
        {
            Assert.InRange(item.Text.Length, 10, 130);
            Assert.EndsWith(".", item.Statement, StringComparison.Ordinal);
        });
}
