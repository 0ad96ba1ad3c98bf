namespace WorkWindows.Engine.Land;

/// <summary>What the consultant has noted of a parcel that rules depend on.</summary>
public enum SiteFlag
{
    OakWiltNearby,
    BatHabitat,

    /// <summary>A tree in which bats are known, or likely, to roost in summer.</summary>
    RoostTree,

    /// <summary>A cave or mine in which bats winter, within the distance that the state's agency names.</summary>
    HibernaculumNearby,

    /// <summary>An occupied nest of a wild bird other than an eagle.</summary>
    NestBuffer,

    /// <summary>A bald eagle nest within 330 ft (100 m).</summary>
    EagleNestNear,

    /// <summary>A bald eagle nest within 660 ft (200 m).</summary>
    EagleNestBuffer,

    /// <summary>A known site of Heterobasidion root disease within 25 miles (40 km).</summary>
    HeterobasidionNearby,

    WetGround,
    FrozenGroundAccessOnly,

    /// <summary>The owner or the neighbours ask for quiet on the opening days of deer seasons.</summary>
    QuietOnDeerOpeners,

    /// <summary>Land open to public hunting.</summary>
    PublicHunting,

    /// <summary>A slope on which stems and rocks may roll or slide.</summary>
    SteepSlope,

    /// <summary>An overhead power line that a tree of the parcel can reach.</summary>
    PowerLine,

    /// <summary>Bedding cover close to where deer feed.</summary>
    NearFood,

    /// <summary>Cover far from where deer feed.</summary>
    DeepCover,
}
