using Shouldly;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Stands;
using WorkWindows.Engine.Stands.Suitability;
using static WorkWindows.Engine.Tests.Stands.StandFormulaTests;

namespace WorkWindows.Engine.Tests.Stands;

/// <summary>Common practice, no source, where a row names none; docs/rules/stands.md.</summary>
public sealed class HingeSuitabilityTests
{
    private static readonly HingeLimits Usual = new();

    [Theory]
    [InlineData("sugar maple", 6, Fit.Fits, "takes-it")]
    [InlineData("sugar maple", 6.1, Fit.WithCare, "large")]
    [InlineData("sugar maple", 8, Fit.WithCare, "large")]
    [InlineData("sugar maple", 8.1, Fit.No, "too-large")]
    [InlineData("American elm", 4, Fit.Fits, "takes-it")]
    [InlineData("trembling aspen", 3, Fit.No, "poplar")]
    [InlineData("balsam poplar", 3, Fit.No, "poplar")]
    [InlineData("eastern cottonwood", 3, Fit.No, "poplar")]
    [InlineData("yellow-poplar", 3, Fit.No, "poplar")]
    [InlineData("red pine", 3, Fit.No, "conifer")]
    [InlineData("eastern redcedar", 3, Fit.No, "conifer")]
    [InlineData("white ash", 3, Fit.No, "ash")]
    [InlineData("red maple", 4, Fit.Fits, "takes-it")]
    [InlineData("red maple", 4.1, Fit.No, "brittle")]
    [InlineData("black cherry", 4, Fit.Fits, "takes-it")]
    [InlineData("black cherry", 5, Fit.No, "brittle")]
    [InlineData("pin cherry", 5, Fit.No, "brittle")]
    [InlineData("chokecherry", 5, Fit.No, "brittle")]
    [InlineData("shagbark hickory", 5, Fit.WithCare, "barber-chair")]
    [InlineData("ironwood", 5, Fit.WithCare, "weak-or-heavy")]
    [InlineData("boxelder", 5, Fit.WithCare, "weak-or-heavy")]
    [InlineData("basswood", 5, Fit.WithCare, "weak-or-heavy")]
    [InlineData("black willow", 5, Fit.WithCare, "weak-or-heavy")]
    [InlineData("silver maple", 5, Fit.WithCare, "weak-or-heavy")]
    [InlineData("American beech", 5, Fit.Fits, "takes-it")]
    [InlineData("black gum", 5, Fit.Fits, "takes-it")]
    [InlineData("white oak", 5, Fit.WithCare, "heavy-top")]
    [InlineData("northern red oak", 5, Fit.WithCare, "heavy-top")]
    [InlineData("black walnut", 5, Fit.Unknown, "not-known")]
    [InlineData("black locust", 5, Fit.Unknown, "not-known")]
    [InlineData("yellow birch", 5, Fit.Unknown, "not-known")]
    public void Stems_TakeAHinge_ByKindAndSize(string species, double dbhIn, Fit fit, string reason)
    {
        var finding = HingeTrees.Of(new(Named(species), dbhIn, 10), Usual);

        (finding.Fit, finding.Key).ShouldBe((fit, reason));
        finding.Says.ShouldNotBeEmpty();
    }

    [Fact]
    public void Limits_AreTheOrganizations()
    {
        var own = Usual with { EasyDbhIn = 3, LargestDbhIn = 5, LargestBrittleDbhIn = 2 };

        HingeTrees.Of(new(Named("sugar maple"), 4, 10), own).Key.ShouldBe("large");
        HingeTrees.Of(new(Named("sugar maple"), 5.5, 10), own).Says.ShouldContain("Above 5 in");
        HingeTrees.Of(new(Named("red maple"), 3, 10), own).Key.ShouldBe("brittle");
    }

    [Theory]
    // Red oak of 12 in: 101.7 stems an acre cover 60 % of the ground (the worked table of docs/rules/stands.md).
    [InlineData("northern red oak", 12, 101, Fit.Fits)]
    [InlineData("northern red oak", 12, 103, Fit.No)]
    [InlineData("pin oak", 12, 85, Fit.Unknown)]  // no crown is published: 42 to 73 %
    [InlineData("pin oak", 12, 20, Fit.Fits)]
    [InlineData("pin oak", 12, 300, Fit.No)]
    public void Canopy_MustBeOpen_BeforeHingesAreCut(string species, double dbhIn, double stems, Fit fit) =>
        Finding("canopy", Of((species, dbhIn, stems))).Fit.ShouldBe(fit);

    [Fact]
    public void Canopy_SaysWhatToDoFirst() => Finding("canopy", Of(("northern red oak", 12, 150))).Says
        .ShouldBe("Crowns above what may be hinged cover 74 % of the ground. Hinges shaded by more than 60 % die in about three years. "
            + "Remove canopy first.");

    [Fact]
    public void Canopy_LeavesOutWhatIsHinged_AndBatsLoseThatCover()
    {
        var stand = Of(("northern red oak", 12, 60), ("sugar maple", 5, 400));

        stand.CanopyCoverPercent.Low.ShouldBeGreaterThan(60);
        Finding("canopy", stand).Fit.ShouldBe(Fit.Fits);
        Finding("bat-cover", stand, SiteFlag.BatHabitat).Fit.ShouldBe(Fit.No);
    }

    [Theory]
    [InlineData("sugar maple", 4, Fit.No, Fit.No, "own")]
    [InlineData("paper birch", 4, Fit.Fits, Fit.Fits, "own")]
    [InlineData("paper birch", 7, Fit.Fits, Fit.WithCare, "large")]
    [InlineData("paper birch", 9, Fit.Fits, Fit.No, "too-large")]
    [InlineData("white ash", 4, Fit.WithCare, Fit.WithCare, "own")]
    [InlineData("white ash", 8.5, Fit.WithCare, Fit.No, "too-large")]
    public void Species_AreAsTheOrganizationSays_UpToItsSizes(string species, double dbhIn, Fit own, Fit fit, string reason)
    {
        var finding = HingeTrees.Of(new(Named(species), dbhIn, 10), Usual with { Species = Usual.Species.Add(species, own) });

        (finding.Fit, finding.Key).ShouldBe((fit, reason));
    }

    [Theory]
    [InlineData(0.24, Fit.WithCare)]
    [InlineData(0.25, Fit.Fits)]
    [InlineData(0.5, Fit.Fits)]
    [InlineData(0.51, Fit.WithCare)]
    public void Pocket_IsAQuarterToHalfAnAcre(double acres, Fit fit) => HingeStand.Of(Of(), Usual, [], acres)
        .Single(finding => finding.Key == "pocket").Fit.ShouldBe(fit);

    [Theory]
    // Indiana bat summer habitat: 60 % cover at least (docs/rules/bats.md); step 2 of the worked stand has 41.8 %.
    [InlineData(60, Fit.No)]
    [InlineData(103, Fit.Fits)]
    public void Bats_KeepTheirCover(double stems, Fit fit)
    {
        Finding("bat-cover", Of(("northern red oak", 12, stems)), SiteFlag.BatHabitat).Fit.ShouldBe(fit);
        HingeStand.Of(Of(("northern red oak", 12, stems)), Usual, [], null)
            .ShouldNotContain(finding => finding.Key == "bat-cover");
    }

    [Fact]
    public void Stand_IsToldHowToCut_AndWhatToKeep()
    {
        Finding("cut", Of()).Says.ShouldBe(
            "Cut level, about half through, 3 to 4 ft up, about the hip. Never at the height of the face.");
        Finding("clear-first", Of()).Says.ShouldContain("nothing overhead is left to fall");
        Finding("leave-be", Of()).Says.ShouldContain("dead ash");
        foreach (var flag in new[] { SiteFlag.RoostTree, SiteFlag.BatHabitat })
            Finding("roost-trees", Of(), flag).Says.ShouldContain("keep them");
    }

    [Theory]
    [InlineData("sugar maple", 2, 6, Fit.Fits, "takes-it")]
    [InlineData("sugar maple", 6, 8, Fit.WithCare, "large")]
    [InlineData("sugar maple", 4, 12, Fit.WithCare, "thin-only")]
    [InlineData("sugar maple", 9, 12, Fit.No, "too-large")]
    [InlineData("red maple", 2, 6, Fit.WithCare, "thin-only")]
    [InlineData("red pine", 2, 6, Fit.No, "conifer")]
    [InlineData("boxelder", 4, 12, Fit.WithCare, "thin-only")]
    [InlineData("black walnut", 6, 10, Fit.Unknown, "thin-only")]
    // The lower end is in the class: what stands exactly at a limit may be hinged.
    [InlineData("sugar maple", 8, 12, Fit.WithCare, "thin-only")]
    [InlineData("sugar maple", 8.1, 12, Fit.No, "too-large")]
    [InlineData("sugar maple", 7.9, 12, Fit.WithCare, "thin-only")]
    [InlineData("sugar maple", 8, 8, Fit.WithCare, "large")]
    [InlineData("red maple", 4, 6, Fit.WithCare, "thin-only")]
    [InlineData("red maple", 4.1, 6, Fit.No, "brittle")]
    [InlineData("red maple", 3.9, 6, Fit.WithCare, "thin-only")]
    [InlineData("red maple", 4, 4, Fit.Fits, "takes-it")]
    public void Class_IsJudgedByBothItsEnds(string species, double fromIn, double toIn, Fit fit, string reason)
    {
        var finding = HingeTrees.OfClass(Named(species), new(fromIn, toIn), Usual);

        (finding.Fit, finding.Key).ShouldBe((fit, reason));
    }

    [Fact]
    public void Canopy_CountsTheThickStemsOfAClass_WhichMayStayOverhead()
    {
        // Sugar maples of 8 in take a hinge and those above do not: a class from 6 to 10 in may all stand, or none of it.
        var middle = Of(("sugar maple", 8, 300));
        var asClass = middle with { Classes = [middle.Classes[0] with { RangeIn = new(6, 10) }] };
        var large = Of(("sugar maple", 8.5, 300));

        Finding("canopy", middle).Fit.ShouldBe(Fit.Fits);
        Finding("canopy", large).Fit.ShouldBe(Fit.No);
        Finding("canopy", asClass).Fit.ShouldBe(Fit.Unknown);
        // Hardly a stem of a class from 8 to 16 in takes one.
        var thick = Of(("sugar maple", 12, 300));
        Finding("canopy", thick with { Classes = [thick.Classes[0] with { RangeIn = new(8, 16) }] }).Fit.ShouldBe(Fit.No);
    }

    private static SuitabilityFinding Finding(string key, Stand stand, params SiteFlag[] flags) =>
        HingeStand.Of(stand, Usual, flags, null).Single(finding => finding.Key == key);
}
