using NodaTime;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.WorkDone;

/// <summary>What was done on a day, as it is handed in.</summary>
/// <param name="Id">An id of the sender's own, so that handing it in again adds nothing.</param>
/// <param name="Day">The day in the property's zone.</param>
/// <param name="People">How many were at it.</param>
/// <param name="Hours">Hours that each of them worked; below 0 to take back what an earlier record has too many.</param>
/// <param name="Quantity">How much was done, in the unit of the task, or null.</param>
/// <param name="Stems">Stems that were cut, or null.</param>
/// <param name="Problem">What stood in the way, or null.</param>
/// <param name="LeafOutSeen">Whether the buds of the canopy have opened there.</param>
/// <param name="IsLast">Whether the task is done with it.</param>
public sealed record WorkForm(
    Guid? Id, LocalDate? Day, int? People, decimal? Hours, decimal? Quantity, int? Stems, string? Problem,
    bool? LeafOutSeen, bool? IsLast)
{
    private const int MostPeople = 99;
    private const int LongestProblem = 2000;
    private const int MostStems = 100_000;
    private const decimal MostQuantity = 1_000_000;
    private const int OldestDays = 366;

    /// <param name="today">The day it is there.</param>
    /// <param name="faults">Takes what is not accepted.</param>
    /// <returns>The problem, trimmed; null for none.</returns>
    internal string? Check(LocalDate today, FieldFaults faults)
    {
        if (Id is null || Id == Guid.Empty)
            faults.Add("id", Id, "a UUID of your own for this record");
        if (Day is null || Day > today || Day < today.PlusDays(-OldestDays))
            faults.Add("day", Day, $"a day from {today.PlusDays(-OldestDays):R} to {today:R}");
        if (People is not (>= 1 and <= MostPeople))
            faults.Add("people", People, $"a whole number of people from 1 to {MostPeople}");
        if (Hours is not (>= -24 and <= 24) || Hours == 0)
        {
            faults.Add(
                "hours", Hours, "hours up to 24 that each of them worked, or, with a minus, hours of an earlier record that were too many");
        }
        // What takes back takes all back: hours, amounts and stems.
        var (least, most) = Hours < 0 ? (-1, 0) : (0, 1);
        if (Quantity is { } quantity && (quantity < least * MostQuantity || quantity > most * MostQuantity))
            faults.Add("quantity", Quantity, $"a number from {least * MostQuantity} to {most * MostQuantity}, or nothing");
        if (Stems is { } stems && (stems < least * MostStems || stems > most * MostStems))
            faults.Add("stems", Stems, $"a whole number from {least * MostStems} to {most * MostStems}, or nothing");
        return faults.Optional(
            "problem", Problem, text => text.Length <= LongestProblem, $"at most {LongestProblem} characters");
    }
}

/// <summary>A photo as it is handed in.</summary>
/// <param name="Bytes">Its bytes.</param>
public sealed record PhotoFile(byte[] Bytes)
{
    public const int MostBytes = 5 * 1024 * 1024;

    /// <summary>The most photos of one record.</summary>
    public const int Most = 4;

    /// <returns>What it is by its first bytes (JPEG, PNG and WebP, by their specifications); null for anything else.</returns>
    public string? ContentType => Bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => "image/jpeg",
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => "image/png",
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => "image/webp",
        _ => null,
    };
}
