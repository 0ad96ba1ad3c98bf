using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Feeds;

namespace WorkWindows.Service.Hosting;

/// <summary>Everything that is wrong with one request: each field and what would be accepted there.</summary>
public sealed class FieldFaults
{
    private readonly SortedDictionary<string, List<string>> _faults = new(StringComparer.Ordinal);

    public bool Any => _faults.Count > 0;

    /// <summary>The faults by field, as RFC 9457's extension member 'errors' has them.</summary>
    public Dictionary<string, string[]> Errors =>
        _faults.ToDictionary(fault => fault.Key, fault => fault.Value.ToArray());

    public void Add(string field, object? value, string accepted) => AddSentence(
        field, value is null ? $"Missing: give {accepted}." : $"'{value}' is not accepted: give {accepted}.");

    /// <param name="field">The field.</param>
    /// <param name="sentence">What is wrong with it, where its value must not be repeated.</param>
    public void AddSentence(string field, string sentence)
    {
        if (!_faults.TryGetValue(field, out var messages))
            _faults[field] = messages = [];
        messages.Add(sentence);
    }

    public void Add(FaultReport report, string prefix = "")
    {
        foreach (var fault in report.Faults)
            Add(prefix + fault.Field, fault.Value == "absent" ? null : fault.Value, fault.Accepted);
    }

    /// <returns>The trimmed text, or the empty text with a fault.</returns>
    public string Required(string field, string? text, Func<string, bool> isAccepted, string accepted)
    {
        if (text?.Trim() is { } trimmed && isAccepted(trimmed))
            return trimmed;
        Add(field, text, accepted);
        return "";
    }

    /// <returns>The trimmed text, or null where nothing is given or, with a fault, what is not accepted.</returns>
    public string? Optional(string field, string? text, Func<string, bool> isAccepted, string accepted) =>
        string.IsNullOrWhiteSpace(text) ? null
        : Required(field, text, isAccepted, accepted) is { Length: > 0 } trimmed ? trimmed
        : null;

    public ValidationProblem ToProblem() =>
        TypedResults.ValidationProblem(Errors, title: "Some fields are not accepted. Nothing was stored.");
}
