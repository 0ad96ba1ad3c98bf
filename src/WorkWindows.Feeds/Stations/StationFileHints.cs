using NodaTime;

namespace WorkWindows.Feeds.Stations;

/// <summary>What a station file is known to be, where it does not say so itself.</summary>
/// <param name="StationId">Whose file it is; needed for files without a station's id.</param>
/// <param name="Units">Needed for files with a column for each element.</param>
/// <param name="Today">Where the station is: later days have no readings yet. Null takes all days.</param>
public sealed record StationFileHints(string? StationId = null, StationUnits? Units = null, LocalDate? Today = null);
