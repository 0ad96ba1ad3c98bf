using WorkWindows.Engine.Land;

namespace WorkWindows.Engine.Tests.Land;

public class SpeciesCatalogueTests
{
    [Theory]
    [InlineData("northern red oak", SpeciesGroup.RedOak)]
    [InlineData("Black Oak", SpeciesGroup.RedOak)]
    [InlineData("white oak", SpeciesGroup.WhiteOak)]
    [InlineData("red oak", SpeciesGroup.RedOak)]
    [InlineData("quaking aspen", SpeciesGroup.Aspen)]
    [InlineData("black cherry", SpeciesGroup.Cherry)]
    [InlineData("AMERICAN BEECH", SpeciesGroup.OtherHardwood)]
    [InlineData("eastern hemlock", SpeciesGroup.Conifer)]
    public void Find_GivesTheGroup_WhateverTheCapitals(string name, SpeciesGroup group) =>
        Assert.Equal(group, SpeciesCatalogue.Find(name)?.Group);

    [Theory]
    [InlineData("oak")]
    [InlineData("")]
    public void Find_GivesNull_WhenTheNameIsNotKept(string name) => Assert.Null(SpeciesCatalogue.Find(name));

    [Fact]
    public void All_HasSpeciesOfEveryGroup_AndEachNameOnce()
    {
        Assert.Equal(
            Enum.GetValues<SpeciesGroup>(),
            SpeciesCatalogue.All.Select(species => species.Group).Distinct().Order());
        Assert.Distinct(SpeciesCatalogue.All.Select(species => species.Name));
    }
}
