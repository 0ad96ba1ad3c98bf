namespace WorkWindows.Feeds;

internal sealed class FaultCollector
{
    private readonly List<InputFault> _faults = [];
    private int _more;

    public bool Any => _faults.Count > 0;

    public void Add(int? line, string field, string value, string accepted, string? item = null)
    {
        if (_faults.Count < FaultReport.Limit)
            _faults.Add(new(line, field, value, accepted, item));
        else
            _more++;
    }

    public FaultReport ToReport() => Any ? new([.. _faults], _more) : FaultReport.None;
}
