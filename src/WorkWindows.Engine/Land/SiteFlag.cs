namespace WorkWindows.Engine.Land;

/// <summary>What the consultant has noted of a parcel that rules depend on.</summary>
public enum SiteFlag
{
    OakWiltNearby,
    BatHabitat,
    NestBuffer,
    WetGround,
    FrozenGroundAccessOnly,

    /// <summary>The owner or the neighbours ask for quiet on the opening days of deer seasons.</summary>
    QuietOnDeerOpeners,
}
