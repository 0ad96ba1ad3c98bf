using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Mvc;

namespace WorkWindows.Service.Hosting;

/// <summary>Says where in a JSON body the fault is, and what would be accepted there.</summary>
internal static partial class JsonFaults
{
    private static readonly (string Sign, string Form)[] Forms =
    [
        ("NodaTime.LocalDate", "a date such as \"2025-03-01\""),
        ("NodaTime.LocalTime", "a time of day such as \"08:00:00\""),
        ("NodaTime.Instant", "a time in UTC such as \"2025-03-01T12:00:00Z\""),
        ("System.Guid", "an id such as \"01970000-0000-7000-8000-000000000000\""),
        ("System.Int32", "a whole number"),
        ("System.Double", "a number"),
        ("System.Decimal", "a number"),
        ("System.Boolean", "true or false"),
        ("as a string", "a text in quotes"),
    ];

    public static ProblemDetails Describe(JsonException fault)
    {
        var line = fault.LineNumber + 1;
        if (AbsentNames().Match(fault.Message) is { Success: true, Groups: [_, var names] })
            return Absent(line, names.Value);
        var field = fault.Path is null or "$" ? null : fault.Path.Replace("$.", "", StringComparison.Ordinal);
        var place = (line, field) switch
        {
            (null, _) => "",
            (_, null) => $"Line {line}: ",
            _ => $"Line {line}, field '{field}': ",
        };
        return new ProblemDetails
        {
            Status = StatusCodes.Status400BadRequest,
            Title = "The body is not the JSON that is expected.",
            Detail = place + Reason(fault),
            Extensions = { ["line"] = line, ["field"] = field },
        };
    }

    private static ProblemDetails Absent(long? line, string names) => new()
    {
        Status = StatusCodes.Status400BadRequest,
        Title = "The body is not the JSON that is expected.",
        Detail = $"Missing: {names}. Where nothing is meant, write null. Nothing was stored.",
        Extensions = { ["line"] = line, ["field"] = names.Replace("'", "", StringComparison.Ordinal) },
    };

    private static string Reason(JsonException fault)
    {
        var message = Position().Replace(fault.Message, "");
        if (!message.Contains("could not be converted", StringComparison.Ordinal)
            && !message.Contains("Cannot convert value", StringComparison.Ordinal))
        {
            return TypeName().Replace(message, "");
        }

        var reasons = message + fault.InnerException?.Message;
        var form = Array.Find(Forms, known => reasons.Contains(known.Sign, StringComparison.Ordinal)).Form;
        return form is null ? "the value is not one of those accepted." : $"the value must be {form}.";
    }

    [GeneratedRegex(@"missing required properties including: (.+?)\.?$", RegexOptions.Singleline)]
    private static partial Regex AbsentNames();

    [GeneratedRegex(@"\s*Path: .*$", RegexOptions.Singleline)]
    private static partial Regex Position();

    [GeneratedRegex(@" for type '[^']*'| contained in type '[^']*'|, which .*? type '[^']*'")]
    private static partial Regex TypeName();
}
