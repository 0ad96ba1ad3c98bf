namespace WorkWindows.Engine.Weather.Quality;

/// <summary>
/// Finds instruments that stand still. Days without a value neither end a run nor count. Source:
/// docs/rules/weather-quality.md.
/// </summary>
internal static class StuckRuns
{
    /// <summary>
    /// As many equal values in a row are rejected. GHCN-Daily asks for 20 (Durre et al. 2010); 400 station-years of
    /// whole °F have no run of more than 6.
    /// </summary>
    public const int Days = 15;

    public static void Check(CheckedColumn column)
    {
        if (!Varies(column.Element))
            return;
        var run = new List<int>();
        for (var day = 0; day < column.Values.Length; day++)
        {
            var value = column.Values[day];
            if (double.IsNaN(value))
                continue;
            if (run.Count > 0 && value != column.Values[run[0]])
                End(column, run);
            // Weeks without rain are common.
            if (value != 0 || column.Element != DailyElement.PrecipitationMm)
                run.Add(day);
        }
        End(column, run);
    }

    /// <summary>
    /// Snow may lie, or be absent, for months on end; air may be saturated and skies without thunder.
    /// </summary>
    private static bool Varies(DailyElement element) => element switch
    {
        DailyElement.MinTemperatureC or DailyElement.MaxTemperatureC or DailyElement.WindMps or DailyElement.GustMps
            or DailyElement.PrecipitationMm => true,
        DailyElement.SnowDepthCm or DailyElement.MinHumidityPercent or DailyElement.ThunderChancePercent => false,
    };

    private static void End(CheckedColumn column, List<int> run)
    {
        if (run.Count >= Days)
            run.ForEach(day => column.Reject(day, RejectionReason.Stuck));
        run.Clear();
    }
}
