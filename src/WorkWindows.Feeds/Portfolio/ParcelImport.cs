using System.Collections.Immutable;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>The parcels of a file, or everything that is wrong in it; never a part of the parcels.</summary>
public sealed record ParcelImport
{
    internal ParcelImport(ImmutableArray<ParcelRow> rows, FaultReport faults) =>
        (Rows, Faults) = (faults.IsEmpty ? rows : [], faults);

    public bool IsAccepted => Faults.IsEmpty;

    /// <summary>In the order of the file; empty unless accepted.</summary>
    public ImmutableArray<ParcelRow> Rows { get; }

    public FaultReport Faults { get; }
}
