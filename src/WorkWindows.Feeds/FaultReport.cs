using System.Collections.Immutable;

namespace WorkWindows.Feeds;

/// <summary>Everything that is wrong in one input, in the order in which it was found.</summary>
/// <param name="Faults">At most <see cref="Limit"/> faults.</param>
/// <param name="More">How many further faults were found and left out.</param>
public sealed record FaultReport(ImmutableArray<InputFault> Faults, int More)
{
    public const int Limit = 100;

    public static FaultReport None { get; } = new([], 0);

    public bool IsEmpty => Faults.IsEmpty;

    /// <summary>One fault a line.</summary>
    public override string ToString()
    {
        var lines = Faults.Select(fault => fault.ToString());
        return string.Join('\n', More == 0 ? lines : lines.Append($"and {More} more"));
    }
}
