namespace WorkWindows.Engine.Rules.Reading;

/// <summary>One thing that is wrong in a rule pack's file.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Key">The key it stands under, such as rules[2].when.below.</param>
/// <param name="Value">What stands there; null where something is absent.</param>
/// <param name="Accepted">What may stand there.</param>
public sealed record PackFault(long Line, long Column, string Key, string? Value, string Accepted)
{
    /// <summary>The fault without its place.</summary>
    public string What => Value is null
        ? $"{Key} is missing; accepted: {Accepted}"
        : $"{Key} is '{Value}'; accepted: {Accepted}";

    public override string ToString() => $"line {Line}, column {Column}: {What}";
}

/// <summary>A rule pack's file says nothing that can be used; nothing of it is taken.</summary>
public sealed class PackException(IReadOnlyList<PackFault> faults)
    : FormatException(string.Join('\n', faults))
{
    /// <summary>Everything that is wrong, in the order of the file.</summary>
    public IReadOnlyList<PackFault> Faults { get; } = faults;
}
