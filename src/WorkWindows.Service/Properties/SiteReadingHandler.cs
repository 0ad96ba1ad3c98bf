using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Signals;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>A reading as someone reports it.</summary>
/// <param name="Signal">What was read, as in rule packs: frost-depth.</param>
/// <param name="Value">The reading with its unit: 8 in.</param>
/// <param name="SeenOn">The day.</param>
/// <param name="Until">The last day that it may be relied on, included.</param>
/// <param name="Note">Where and how, or null.</param>
public sealed record SiteReadingForm(string? Signal, string? Value, LocalDate? SeenOn, LocalDate? Until, string? Note);

/// <summary>Keeps what was read on properties until it expires.</summary>
public sealed class SiteReadingHandler(WorkWindowsDb db, AuditLog audit, PromptLook look, IClock clock)
{
    private const int LongestNote = 1000;

    /// <summary>Nobody goes back further for a reading that was forgotten.</summary>
    private const int DaysBack = 366;

    /// <param name="propertyId">The property.</param>
    /// <param name="form">The reading.</param>
    /// <param name="personId">Who read it, or answers for it.</param>
    /// <param name="cancellation">Ends the queries.</param>
    /// <returns>The reading; the one that was there, where it says the same.</returns>
    public async Task<Change<SiteReadingRow>> CreateAsync(
        Guid propertyId, SiteReadingForm form, Guid personId, CancellationToken cancellation)
    {
        if (await db.Properties.SingleOrDefaultAsync(row => row.Id == propertyId, cancellation) is not { } property)
            return Change.NotFound<SiteReadingRow>();
        var now = clock.GetCurrentInstant();
        var faults = new FieldFaults();
        var kind = Kind(form.Signal, faults);
        var value = kind is { } known ? Value(known, form.Value, faults) : null;
        if (kind is { } signal)
            CheckDays(signal, form, now.InZone(DateTimeZoneProviders.Tzdb[property.TimeZone]).Date, faults);
        var note = faults.Optional(
            "note", form.Note, text => text.Length <= LongestNote, $"at most {LongestNote} characters");
        if (faults.Any)
            return Change.Refused<SiteReadingRow>(faults);

        var reading = new SiteReadingRow
        {
            PropertyId = propertyId,
            Signal = kind!.Value,
            Value = value!.InSignalUnit,
            Given = form.Value!,
            SeenOn = form.SeenOn!.Value,
            Until = form.Until!.Value,
            Note = note,
            RecordedById = personId,
            RecordedAt = now,
        };
        var same = await db.SiteReadings.Include(row => row.RecordedBy)
            .Where(row => row.PropertyId == propertyId && row.Signal == reading.Signal && row.SeenOn == reading.SeenOn)
            .OrderByDescending(row => row.RecordedAt).FirstOrDefaultAsync(cancellation);
        if (same is not null && (same.Given, same.Until, same.Note) == (reading.Given, reading.Until, note))
            return Change.Done(same);
        db.Add(reading);
        await audit.AddAsync(AuditKind.SiteReading, reading.Id, null, SiteReadingView.Of(reading, null), cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        await db.Entry(reading).Reference(row => row.RecordedBy).LoadAsync(cancellation);
        look.Enqueue();
        return Change.Done(reading);
    }

    public async Task<Change<SiteReadingRow>> DeleteAsync(Guid propertyId, Guid id, CancellationToken cancellation)
    {
        if (await db.SiteReadings.SingleOrDefaultAsync(
            row => row.Id == id && row.PropertyId == propertyId, cancellation) is not { } reading)
        {
            return Change.NotFound<SiteReadingRow>();
        }
        db.Remove(reading);
        await audit.AddAsync(AuditKind.SiteReading, id, SiteReadingView.Of(reading, null), null, cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        look.Enqueue();
        return Change.Done(reading);
    }

    private static SignalKind? Kind(string? signal, FieldFaults faults)
    {
        if (signal is not null && SignalWords.OfSiteReadings.TryGetValue(signal, out var kind))
            return kind;
        faults.Add("signal", signal, string.Join(", ", SignalWords.OfSiteReadings.Keys));
        return null;
    }

    private static Threshold? Value(SignalKind kind, string? text, FieldFaults faults)
    {
        var value = RuleUnits.Parse(text, RuleUnits.For(kind), out var accepted);
        if (value is null)
            faults.Add("value", text, accepted);
        return value;
    }

    /// <summary>
    /// Weather of a day is known when the day is over: a gust may still come, and says nothing of tomorrow. Snow and
    /// frost are what they are, and stay a while.
    /// </summary>
    private static void CheckDays(SignalKind kind, SiteReadingForm form, LocalDate today, FieldFaults faults)
    {
        var lasts = SiteReadings.SpanOf(kind) == SiteReadingSpan.UntilItExpires;
        var (oldest, newest) = (today.PlusDays(-DaysBack), lasts ? today : today.PlusDays(-1));
        if (form.SeenOn is not { } seenOn || seenOn < oldest || seenOn > newest)
        {
            faults.Add("seenOn", form.SeenOn, $"a day from {oldest:R} to {newest:R}");
            return;
        }
        var latest = lasts ? seenOn.PlusDays(SiteReadingRow.LongestDays) : seenOn;
        if (form.Until is not { } until || until < seenOn || until > latest)
        {
            faults.Add("until", form.Until, lasts
                ? $"the last day that it may be relied on, from {seenOn:R} to {latest:R}"
                : $"{seenOn:R}: weather of a day says nothing of the next one");
        }
    }
}
