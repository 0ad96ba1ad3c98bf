namespace WorkWindows.Feeds;

/// <summary>One thing that is wrong in what was handed in, and what would be right.</summary>
/// <param name="Line">The line of the file, from 1; null where the input has no lines.</param>
/// <param name="Field">The column, property or part that is wrong.</param>
/// <param name="Value">What stands there, shortened if it is long.</param>
/// <param name="Accepted">What would be accepted instead.</param>
/// <param name="Item">The key of the parcel or task that it belongs to, where that is known.</param>
public sealed record InputFault(int? Line, string Field, string Value, string Accepted, string? Item = null)
{
    private const int LongestValue = 80;

    public string Value { get; } = Value.Length <= LongestValue ? Value : $"{Value[..LongestValue]}…";

    public override string ToString()
    {
        var place = Line is { } line ? $"line {line}: " : "";
        var item = Item is null ? "" : $"{Item}: ";
        return $"{place}{item}{Field} '{Value}': {Accepted}";
    }
}
