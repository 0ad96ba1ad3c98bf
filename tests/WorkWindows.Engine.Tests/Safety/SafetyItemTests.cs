using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Safety;
using static WorkWindows.Engine.Practices.PracticeTraits;
using static WorkWindows.Engine.Safety.SafetyItemKind;

namespace WorkWindows.Engine.Tests.Safety;

public class SafetyItemTests
{
    private const string Osha = "29 CFR 1910.266, ";
    private const string Michigan = "Michigan Administrative Code, ";
    private const string ForestService = "USDA Forest Service, FSH 6709.11";

    /// <summary>Every item: its kind, the traits it goes with, a word that its text must say, its source.</summary>
    public static TheoryData<string, SafetyItemKind, PracticeTraits, string, string> Items => new()
    {
        { "gear-check", Wear, None, "before first use", Osha + "(d)(1)(i)-(ii)" },
        { "hard-hat", Wear, None, "ANSI/ISEA Z89.1", Osha + "(d)(1)(vi)" },
        { "eyes", Wear, None, "ANSI/ISEA Z87.1", Osha + "(d)(1)(vii)" },
        { "boots", Wear, None, "cover the ankle", Osha + "(d)(1)(v)" },
        { "saw-face", Wear, ChainSaw, "mesh screen", Osha + "(d)(1)(vii)" },
        { "saw-ears", Wear, ChainSaw, "30 min", "29 CFR 1910.95, Table G-16" },
        { "saw-legs", Wear, ChainSaw, "ASTM F1897 or F3325", Osha + "(d)(1)(iv)" },
        { "saw-boots", Wear, ChainSaw, "cut-resistant boots", Osha + "(d)(1)(v)" },
        { "saw-gloves", Wear, ChainSaw, "gloves", ForestService },
        { "saw-sleeves", Wear, ChainSaw, "long sleeves", ForestService },
        { "first-aid-kit", Carry, None, "ANSI/ISEA Z308.1", Osha + "(d)(2)(i)" },
        { "first-aid-size", Carry, None, "two or three people", Osha + "Appendix A" },
        { "help-directions", Carry, None, "written directions", Osha + "Appendix A" },
        { "first-aid-training", Do, None, "first aid and CPR", Osha + "(i)(7)(i)-(ii)" },
        { "never-alone", Do, None, "sight or hearing", Osha + "(d)(6)(iii)" },
        { "danger-trees", Do, None, "two tree lengths", Osha + "(h)(1)(vi)" },
        { "heat", Do, None, "91 °F", "OSHA, using the heat index" },
        { "head-count", Do, None, "end of the shift", Osha + "(d)(6)(iv)" },
        { "saw-signals", Do, ChainSaw, "not contact", Osha + "(d)(7)(i)" },
        { "saw-check", Do, ChainSaw, "chain tension", Osha + "(e)(2)(ii)" },
        { "saw-brake", Do, ChainSaw, "working chain brake", Osha + "(e)(2)(i)" },
        { "saw-fuelling", Do, ChainSaw, "10 ft", Osha + "(e)(2)(iv)" },
        { "saw-starting", Do, ChainSaw, "10 ft", Osha + "(e)(2)(v)-(vii)" },
        { "saw-grip", Do, ChainSaw, "both hands", "Washington Administrative Code, WAC 296-45-295" },
        { "saw-carrying", Do, ChainSaw, "50 ft", Osha + "(e)(2)" },
        { "saw-bucking", Do, ChainSaw, "uphill side", "North Carolina DOL, tree harvesting" },
        { "felling-spacing", Do, FellsTrees, "two tree lengths between crews", Osha + "(d)(6)(i)-(ii)" },
        { "felling-approach", Do, FellsTrees, "two tree lengths from a feller", Osha + "(h)(1)" },
        { "felling-look", Do, FellsTrees, "snow and ice", Michigan + "R 408.15151(2)" },
        { "felling-danger-tree", Do, FellsTrees, "two tree lengths off", Osha + "(h)(1)(vi)" },
        { "felling-retreat", Do, FellsTrees, "diagonally", Osha + "(h)(2)(i)" },
        { "felling-leave", Do, FellsTrees, "as soon as", Osha + "(h)(2)(ii)" },
        { "felling-undercut", Do, FellsTrees, "Undercut", Osha + "(h)(2)(v)" },
        { "felling-backcut", Do, FellsTrees, "enough hinge", Osha + "(h)(2)(vi)-(vii)" },
        { "felling-half-cut", Do, FellsTrees, "half-cut stem", Osha + "(h)(1)(vi), read for hinge cutting" },
        { "machine-distance", Do, MachineOnSoil, "two tree lengths", Osha + "(h)(1)" },
        { "herbicide-label", Do, Herbicide, "label", "Label practice" },
        { "herbicide-frozen", Do, Herbicide, "above freezing", "Label practice" },
        { "fire-prescription", Do, Fire, "2-15 mph", "Prescribed fire, extension.org" },
        { "fire-front", Do, Fire, "12 h", "Oklahoma State University Extension, E-1010" },
        { "stop-weather", Stop, None, "high wind", Osha + "(d)(5)" },
        { "stop-lightning", Stop, None, "30 min", "Texas DWC, OSHA/NOAA FS-3863, 30-30 rule" },
        { "felling-power-line", Stop, FellsTrees, "utility", Michigan + "R 408.15151(4)" },
        { "felling-wind", Stop, FellsTrees, "hides your view", Michigan + "R 408.15117" },
        { "fire-red-flag", Stop, Fire | ChainSaw, "sparks", "US National Weather Service, Red Flag Warnings" },
    };

    [Theory]
    [MemberData(nameof(Items))]
    public void AllItems_StateEachDutyWithItsSource(
        string id, SafetyItemKind kind, PracticeTraits traits, string words, string source)
    {
        var item = Assert.Single(SafetyChecklist.AllItems, item => item.Id == id);
        Assert.Equal((kind, traits, source), (item.Kind, item.Traits, item.Source.ToString()));
        Assert.Contains(words, item.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AllItems_AreTheseAndNoOthers() =>
        Assert.Equal(
            Items.Select(row => row.Data.Item1).Order(StringComparer.Ordinal),
            SafetyChecklist.AllItems.Select(item => item.Id).Order(StringComparer.Ordinal));

    [Fact]
    public void FromMemory_MarksTheItemsThatWereNotCheckedAgainstTheirDocument() =>
        Assert.Equal(
            [
                "hard-hat", "head-count", "saw-boots", "saw-carrying", "felling-spacing", "herbicide-label",
                "herbicide-frozen",
            ],
            SafetyChecklist.AllItems.Where(item => item.FromMemory).Select(item => item.Id));

    [Fact]
    public void Text_FitsAPhone_AndIsWholeSentences() =>
        Assert.All(SafetyChecklist.AllItems, item =>
        {
            Assert.InRange(item.Text.Length, 10, 130);
            Assert.EndsWith(".", item.Text, StringComparison.Ordinal);
        });
}
