namespace WorkWindows.Engine.Practices;

/// <summary>What a kind of work does to trees, soil and people: rules and checklists are scoped by it.</summary>
[Flags]
public enum PracticeTraits
{
    None = 0,

    /// <summary>Stems are cut down or left standing only by their hinge.</summary>
    FellsTrees = 1,

    /// <summary>Living wood is exposed, so that insects can carry disease into the tree.</summary>
    WoundsTrees = 2,

    ChainSaw = 4,

    /// <summary>Machines travel on the soil.</summary>
    MachineOnSoil = 8,

    Herbicide = 16,

    Fire = 32,

    Planting = 64,
}

/// <summary>A kind of work.</summary>
/// <param name="Id">Its key in rule packs and files, lower case with hyphens.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Traits">What it does.</param>
public sealed record Practice(string Id, string Name, PracticeTraits Traits);
