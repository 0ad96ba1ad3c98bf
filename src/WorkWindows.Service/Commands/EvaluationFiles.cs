using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using WorkWindows.Engine.Weather;
using WorkWindows.Engine.Weather.Quality;
using WorkWindows.Feeds;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Feeds.Stations;

namespace WorkWindows.Service.Commands;

/// <summary>The files of one evaluation without a server.</summary>
/// <param name="Parcels">GeoJSON.</param>
/// <param name="Tasks">CSV.</param>
/// <param name="Weather">Station records.</param>
/// <param name="WeatherUnits">The units of those that do not name them.</param>
internal sealed record EvaluationFiles(
    FileInfo Parcels, FileInfo Tasks, IReadOnlyList<FileInfo> Weather, StationUnits? WeatherUnits)
{
    /// <summary>Reads all of them, or says everything that is wrong, one line a fault.</summary>
    public bool TryRead(
        [NotNullWhen(true)] out EvaluationInput? input, [NotNullWhen(false)] out IReadOnlyList<string>? faults)
    {
        var found = new List<string>();
        var parcels = Read(Parcels, stream =>
        {
            var import = ParcelFile.Read(stream);
            return (import.Rows, import.Faults);
        }, found);
        var known = parcels.IsDefault ? [] : parcels.Select(row => row.Parcel).ToHashSet();
        // Without the parcels every task would be reported as lying on an unknown one.
        var tasks = parcels.IsDefault ? default : Read(Tasks, stream =>
        {
            var import = TaskFile.Read(stream, known, new HashSet<string>());
            return (import.Rows, import.Faults);
        }, found);
        var stations = Weather.Select(file => Read(file, stream =>
        {
            var import = StationFile.Read(stream, HintsOf(file));
            return (import.Station, import.Faults);
        }, found)).ToArray();

        faults = found.Count == 0 ? null : found;
        input = found.Count == 0 ? Input(parcels, tasks, [.. stations.Select(station => Checked(station!))]) : null;
        return input is not null;
    }

    /// <summary>Files that do not name their station are named after it, as NOAA names them.</summary>
    private StationFileHints HintsOf(FileInfo file)
    {
        var start = file.Name[..Math.Min(StationIds.Length, file.Name.Length)];
        return new(StationIds.IsId(start) ? start : null, WeatherUnits);
    }

    private static T? Read<T>(FileInfo file, Func<Stream, (T? Value, FaultReport Faults)> read, List<string> faults)
    {
        try
        {
            using var stream = file.OpenRead();
            var (value, report) = read(stream);
            if (report.IsEmpty)
                return value;
            faults.AddRange(report.ToString().Split('\n').Select(fault => $"{file.Name}: {fault}"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add($"{file.Name}: {e.Message}");
        }
        return default;
    }

    private static StationWeather Checked(StationRecord station) => new(
        station.StationId,
        QualityControl.Check(station.Readings, Service.Weather.Stations.ReadUsUnits(station.StationId)).Usable);

    /// <summary>
    /// The first station gives everything it has; a later one gives what those before it do not report.
    /// </summary>
    private static EvaluationInput Input(
        ImmutableArray<ParcelRow> parcels, ImmutableArray<TaskRow> tasks, ImmutableArray<StationWeather> stations)
    {
        var merged = DailySeries.Empty;
        foreach (var station in stations)
        {
            DailyElement[] lacking = [.. Enum.GetValues<DailyElement>().Where(element => merged[element] is null)];
            merged = merged.WithElements(station.Series, lacking);
        }
        return new(parcels, tasks, merged) { Stations = stations };
    }
}
