using NodaTime;
using NodaTime.Text;

namespace WorkWindows.Service.Hosting;

/// <summary>The moment that an address names.</summary>
internal static class AskedMoment
{
    private const string Form =
        "a time as in 2026-02-01T04:00:00Z or 2026-02-01T00:00:00-04:00, not in the future; a plus sign is written %2B";

    /// <param name="field">The name of the parameter.</param>
    /// <param name="text">RFC 3339; null for now.</param>
    /// <param name="now">The time of asking; what will be known later cannot be asked for.</param>
    /// <param name="faults">What is wrong with it.</param>
    public static Instant Read(string field, string? text, Instant now, FieldFaults faults)
    {
        if (text is null)
            return now;
        if (OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true, Value: var given }
            && given.ToInstant() is var moment && moment <= now)
        {
            return moment;
        }
        faults.Add(field, text, Form);
        return now;
    }
}
