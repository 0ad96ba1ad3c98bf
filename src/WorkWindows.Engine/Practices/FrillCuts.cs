namespace WorkWindows.Engine.Practices;

/// <summary>
/// Cuts around a stem that take herbicide: one for each inch of its diameter, two at least, about 2 in long and 1 to
/// 2 in apart. Source: Penn State fact sheet on hack-and-squirt, quoted in its release of June 2019.
/// </summary>
public static class FrillCuts
{
    private const int AtLeast = 2;

    /// <param name="dbhIn">Diameter at breast height, inches; a part of an inch takes a whole cut.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0.</exception>
    public static int CountFor(double dbhIn)
    {
        if (dbhIn is not (> 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(dbhIn), dbhIn, "Not the diameter of a stem.");
        return Math.Max(AtLeast, (int)Math.Ceiling(dbhIn));
    }
}
