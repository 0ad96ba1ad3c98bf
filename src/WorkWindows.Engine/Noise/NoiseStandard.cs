namespace WorkWindows.Engine.Noise;

/// <summary>
/// How long ears may bear a noise: a level for eight hours, and how much louder halves the time. Source:
/// docs/rules/heat-and-cold.md.
/// </summary>
/// <param name="EightHoursDba">The level that may last eight hours, dBA.</param>
/// <param name="HalvingDb">What more of it halves the time, dB.</param>
/// <param name="CeilingDba">No time at all above it, dBA; infinite where there is none.</param>
public sealed record NoiseStandard(double EightHoursDba, double HalvingDb, double CeilingDba)
{
    /// <summary>29 CFR 1910.95, table G-16, seen in a reprint: 90 dBA, 5 dB, and 115 dBA at most.</summary>
    public static NoiseStandard Osha { get; } = new(90, 5, 115);

    /// <summary>NIOSH recommended exposure limit, from memory: 85 dBA and 3 dB.</summary>
    public static NoiseStandard Niosh { get; } = new(85, 3, double.PositiveInfinity);

    /// <summary>The hours that a steady level may last in a day, without hearing protection.</summary>
    /// <param name="levelDba">dBA.</param>
    /// <returns>
    /// Unrounded, where printed tables round, above 24 for a level that may last all day; NaN when the level is NaN.
    /// </returns>
    public double AllowedHours(double levelDba) =>
        levelDba > CeilingDba ? 0 : 8 / Math.Pow(2, (levelDba - EightHoursDba) / HalvingDb);

    /// <summary>What a day's noises take of the limit: above 1 is too much.</summary>
    /// <param name="noises">Levels in dBA and their hours; one of no hours does not count.</param>
    /// <returns>Infinite when one is above the ceiling; NaN when a level or an hour is NaN.</returns>
    /// <exception cref="ArgumentException">Hours are negative.</exception>
    public double Dose(params ReadOnlySpan<(double LevelDba, double Hours)> noises)
    {
        var dose = 0.0;
        foreach (var (levelDba, hours) in noises)
        {
            if (hours < 0)
                throw new ArgumentException($"{hours} h at {levelDba} dBA.", nameof(noises));
            if (hours != 0)
                dose += hours / AllowedHours(levelDba);
        }
        return dose;
    }
}
