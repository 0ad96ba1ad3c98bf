namespace WorkWindows.Feeds.Stations;

/// <summary>The lines of a file without their line ends, and without copying them.</summary>
internal ref struct StationLines(ReadOnlySpan<byte> text)
{
    private ReadOnlySpan<byte> _rest = text;

    /// <summary>From 1; 0 before the first line.</summary>
    public int Number { get; private set; }

    public ReadOnlySpan<byte> Current { get; private set; }

    /// <summary>False for a last line whose line end is absent, which is how a file ends that was cut.</summary>
    public bool IsEnded { get; private set; }

    public bool MoveNext()
    {
        if (_rest.IsEmpty)
            return false;
        var end = _rest.IndexOf((byte)'\n');
        IsEnded = end >= 0;
        Current = (IsEnded ? _rest[..end] : _rest).TrimEnd((byte)'\r');
        _rest = IsEnded ? _rest[(end + 1)..] : default;
        Number++;
        return true;
    }
}
