using System.Collections.Immutable;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>The planned tasks of a file, or everything that is wrong in it; never a part of the tasks.</summary>
public sealed record TaskImport
{
    internal TaskImport(ImmutableArray<TaskRow> rows, FaultReport faults) =>
        (Rows, Faults) = (faults.IsEmpty ? rows : [], faults);

    public bool IsAccepted => Faults.IsEmpty;

    /// <summary>In the order of the file; empty unless accepted.</summary>
    public ImmutableArray<TaskRow> Rows { get; }

    public FaultReport Faults { get; }
}
