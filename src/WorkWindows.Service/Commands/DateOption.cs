using System.CommandLine;
using System.CommandLine.Parsing;
using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Service.Commands;

/// <summary>Options that are a day.</summary>
internal static class DateOption
{
    public static Option<LocalDate> Required(string name, string description) =>
        new(name) { Required = true, CustomParser = result => Date(result) ?? default, Description = description };

    public static Option<LocalDate?> Optional(string name, string description) =>
        new(name) { CustomParser = Date, Description = description };

    private static LocalDate? Date(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date })
            return date;
        result.AddError($"{result.Argument.Name} '{text}': a date such as 2024-01-31");
        return null;
    }
}
