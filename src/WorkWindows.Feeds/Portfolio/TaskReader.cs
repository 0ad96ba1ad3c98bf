using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Feeds.Portfolio;

/// <summary>What was read of one line; the row is null if a field of it was wrong.</summary>
internal sealed record ReadTask(
    int Line, string? Key, string? Parcel, ImmutableArray<string> Prerequisites, TaskRow? Row);

/// <summary>Reads one line of a task file.</summary>
internal sealed class TaskReader
{
    private const string DateForm = "a date as yyyy-MM-dd, such as 2026-02-16, or nothing";

    private static readonly string Practices =
        $"one of: {string.Join(", ", PracticeCatalogue.All.Select(practice => practice.Id))}";

    private static readonly ImmutableSortedDictionary<string, QuantityUnit> Units = Enum.GetValues<QuantityUnit>()
        .ToImmutableSortedDictionary(unit => unit.ToString().ToLowerInvariant(), unit => unit);

    private readonly CsvReader _csv;
    private readonly FaultCollector _faults;
    private readonly int _line;
    private readonly string? _key;
    private bool _isWrong;

    private TaskReader(CsvReader csv, FaultCollector faults)
    {
        (_csv, _faults, _line) = (csv, faults, (int)csv.LineNumber);
        _key = Text("task", FieldText.IsKey, FieldText.Key);
    }

    public static ReadTask Read(CsvReader csv, FaultCollector faults) => new TaskReader(csv, faults).Read();

    private ReadTask Read()
    {
        var parcel = Text("parcel", FieldText.IsKey, FieldText.Key);
        var practice = PracticeCatalogue.Find(Field("practice"));
        if (practice is null)
            Fault("practice", Practices);
        var quantity = Quantity();
        if (!Units.TryGetValue(Field("unit"), out var unit))
            Fault("unit", $"one of: {string.Join(", ", Units.Keys)}");
        var crewSize = CrewSize();
        var deadline = Date("deadline");
        var scheduledOn = Date("scheduledOn");
        ImmutableArray<string> prerequisites =
        [
            .. Field("prerequisites")
                .Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Distinct(),
        ];
        var crewLead = Field("crewLead") is "" ? null : Text("crewLead", FieldText.IsMail, FieldText.Mail);
        var row = _isWrong
            ? null
            : new TaskRow(_line, _key!, parcel!, practice!, quantity, unit, crewSize, deadline, scheduledOn,
                prerequisites, crewLead);
        return new(_line, _key, parcel, prerequisites, row);
    }

    private double Quantity()
    {
        const NumberStyles Decimal = NumberStyles.AllowDecimalPoint;
        if (double.TryParse(Field("quantity"), Decimal, CultureInfo.InvariantCulture, out var number)
            && number is > 0 and <= 1_000_000)
            return number;
        Fault("quantity", "a number above 0 and up to 1000000 with a decimal point, such as 12.5");
        return 0;
    }

    private int CrewSize()
    {
        if (int.TryParse(Field("crewSize"), NumberStyles.None, CultureInfo.InvariantCulture, out var people)
            && people is >= 1 and <= 99)
            return people;
        Fault("crewSize", "a whole number of people from 1 to 99");
        return 0;
    }

    private LocalDate? Date(string column)
    {
        if (Field(column) is "")
            return null;
        var parsed = LocalDatePattern.Iso.Parse(Field(column));
        if (parsed.Success)
            return parsed.Value;
        Fault(column, DateForm);
        return null;
    }

    private string? Text(string column, Func<string, bool> isAccepted, string accepted)
    {
        if (isAccepted(Field(column)))
            return Field(column);
        Fault(column, accepted);
        return null;
    }

    private string Field(string column) => _csv.TryGetFieldIndex(column, out var index) ? _csv.GetString(index) : "";

    private void Fault(string column, string accepted)
    {
        _isWrong = true;
        _faults.Add(_line, column, Field(column), accepted, _key);
    }
}
