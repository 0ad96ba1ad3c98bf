using System.Diagnostics.CodeAnalysis;

namespace WorkWindows.Feeds.Stations;

/// <summary>A station's record, or everything that is wrong in its file; never a part of a record.</summary>
public sealed record StationImport
{
    internal StationImport(StationRecord? station, FaultReport faults) => (Station, Faults) = (station, faults);

    [MemberNotNullWhen(true, nameof(Station))]
    public bool IsAccepted => Station is not null;

    public StationRecord? Station { get; }

    public FaultReport Faults { get; }
}
