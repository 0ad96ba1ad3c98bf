namespace WorkWindows.Engine.Land;

/// <summary>The groups of tree species that rules tell apart.</summary>
public enum SpeciesGroup
{
    /// <summary>Red oaks (pointed lobes), which die of oak wilt within weeks.</summary>
    RedOak,

    /// <summary>White oaks (rounded lobes), which oak wilt kills slowly or not at all.</summary>
    WhiteOak,

    Maple,
    Aspen,
    Ash,
    Hickory,
    Cherry,
    OtherHardwood,
    Conifer,
}
