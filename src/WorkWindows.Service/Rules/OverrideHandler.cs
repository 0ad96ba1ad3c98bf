using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Rules;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Rules;

/// <summary>An exception as someone asks for it.</summary>
/// <param name="RuleId">The rule.</param>
/// <param name="ParcelId">The one parcel that it is for, or null for all of the property.</param>
/// <param name="TaskId">The one task that it is for, or null for all of them.</param>
/// <param name="FirstDay">The first day, or null for today.</param>
/// <param name="LastDay">The day on which it expires, included.</param>
/// <param name="Reason">Why.</param>
public sealed record OverrideForm(
    string? RuleId, Guid? ParcelId, Guid? TaskId, LocalDate? FirstDay, LocalDate? LastDay, string? Reason);

/// <summary>Makes and withdraws exceptions to rules.</summary>
public sealed class OverrideHandler(
    WorkWindowsDb db, CurrentOrganization organization, PackShelf shelf, AuditLog audit, PromptLook look, IClock clock)
{
    private const int ShortestReason = 10, LongestReason = 1000;

    private static readonly string ReasonForm = $"why, in {ShortestReason} to {LongestReason} characters";

    /// <param name="propertyId">The property.</param>
    /// <param name="form">What is asked for.</param>
    /// <param name="personId">Who answers for it.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Change<StoredOverride>> CreateAsync(
        Guid propertyId, OverrideForm form, Guid personId, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.Properties.SingleOrDefaultAsync(row => row.Id == propertyId, cancellation) is not { } property)
            return Change.NotFound<StoredOverride>();
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[property.TimeZone]).Date;
        var faults = new FieldFaults();
        var ruleId = faults.Required("ruleId", form.RuleId, text => text.Length > 0, "the id of a rule");
        var reason = faults.Required(
            "reason", form.Reason, text => text.Length is >= ShortestReason and <= LongestReason, ReasonForm);
        var (first, last) = (form.FirstDay ?? today, today.PlusDays(StoredOverride.LongestDays - 1));
        if (first < today)
            faults.Add("firstDay", first, $"a day that is not before today, {today:R}");
        else if (form.LastDay is not { } expiry || expiry < first || expiry > last)
            faults.Add("lastDay", form.LastDay, $"the day on which it expires, from {first:R} to {last:R}");
        await CheckPlaceAsync(propertyId, form, faults, cancellation);
        if (faults.Any)
            return Change.Refused<StoredOverride>(faults);
        if (Objection((await shelf.ReadAsync(cancellation)).Of(propertyId), ruleId, property) is { } objection)
            return Change.Unprocessable<StoredOverride>(objection, ("field", "ruleId"), ("value", ruleId));
        if (await db.RuleOverrides.AnyAsync(
            row => row.PropertyId == propertyId && row.RuleId == ruleId && row.ParcelId == form.ParcelId
                && row.TaskId == form.TaskId && row.WithdrawnAt == null
                && row.FirstDay <= form.LastDay && row.LastDay >= first,
            cancellation))
        {
            return Change.Conflict<StoredOverride>(
                $"An exception to '{ruleId}' on some of these days is in force already; withdraw it first.");
        }

        var exception = new StoredOverride
        {
            PropertyId = propertyId,
            ParcelId = form.ParcelId,
            TaskId = form.TaskId,
            RuleId = ruleId,
            FirstDay = first,
            LastDay = form.LastDay!.Value,
            Reason = reason,
            MadeById = personId,
            MadeAt = now,
        };
        db.Add(exception);
        await audit.AddAsync(AuditKind.Override, exception.Id, null, OverrideView.Of(exception, null), cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        await db.Entry(exception).Reference(row => row.MadeBy).LoadAsync(cancellation);
        look.Enqueue();
        return Change.Done(exception);
    }

    /// <summary>Ends an exception at once; withdrawing it again changes nothing.</summary>
    public async Task<Change<StoredOverride>> WithdrawAsync(
        Guid propertyId, Guid id, Guid personId, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.RuleOverrides.SingleOrDefaultAsync(
            row => row.Id == id && row.PropertyId == propertyId, cancellation) is not { } exception)
        {
            return Change.NotFound<StoredOverride>();
        }
        if (exception.WithdrawnAt is not null)
            return Change.Done(exception);
        var before = OverrideView.Of(exception, null);
        (exception.WithdrawnAt, exception.WithdrawnById) = (clock.GetCurrentInstant(), personId);
        await audit.AddAsync(AuditKind.Override, id, before, OverrideView.Of(exception, null), cancellation);
        look.Note();
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        look.Enqueue();
        return Change.Done(exception);
    }

    private async Task CheckPlaceAsync(
        Guid propertyId, OverrideForm form, FieldFaults faults, CancellationToken cancellation)
    {
        if (form.ParcelId is { } parcel && !await db.Parcels.AnyAsync(
            row => row.Id == parcel && row.PropertyId == propertyId, cancellation))
        {
            faults.Add("parcelId", parcel, "the id of a parcel of the property, or nothing");
        }
        if (form.TaskId is { } task && !await db.PlannedTasks.AnyAsync(
            row => row.Id == task && row.Parcel.PropertyId == propertyId
                && (form.ParcelId == null || row.ParcelId == form.ParcelId), cancellation))
        {
            faults.Add("taskId", task, "the id of a task of the property, on the parcel if one is named, or nothing");
        }
    }

    /// <returns>Why no exception may be made to a rule; null when it may.</returns>
    private static string? Objection(IEnumerable<RulePack> packs, string ruleId, Property property)
    {
        var rules = packs.SelectMany(pack => pack.Rules).Where(rule => rule.Id == ruleId).ToArray();
        // The same id may stand in a pack of the organization and, since an update, in one of the service.
        return rules.Length == 0 ? $"No rule pack of the property has a rule '{ruleId}'."
            : rules.Any(rule => rule.Authority == Authority.Regulation)
                ? $"The rule '{ruleId}' is a regulation: nobody may make an exception to the law."
            : rules.Any(rule => rule.LifeSafety)
                ? $"The rule '{ruleId}' keeps people from being hurt: nobody may make an exception to it."
            : rules.Any(rule => !rule.MayBeExcepted)
                ? $"The rule '{ruleId}' neither closes nor limits a day, so there is nothing to make an exception to."
            : rules.All(rule => !ScopeMatch.SpeaksOf(rule.Scope, property.State, property.CountyFips))
                ? $"The rule '{ruleId}' does not speak of this property, which lies in {property.State}, county "
                    + $"{property.CountyFips}, so there is nothing to make an exception to."
            : null;
    }
}
