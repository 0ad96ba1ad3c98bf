using Hangfire;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>What a crew and its contacts say to a watch. Saying it twice does no harm.</summary>
public sealed class WatchHandler(
    WorkWindowsDb db, CurrentOrganization current, WatchStore store, IBackgroundJobClient jobs,
    IOptions<MailOptions> mail, IClock clock)
{
    private const string HasEnded = "This watch has ended. Start a new one if somebody is on the site.";

    /// <summary>
    /// The crew is fine: it is to be heard from an interval from now. Those who were written to are told.
    /// </summary>
    public async Task<Change<CrewWatch>> CheckInAsync(Guid watchId, Signer by, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await store.LockAsync(watchId, cancellation) is not { } watch)
            return Change.NotFound<CrewWatch>();
        if (watch.EndedAt is not null)
            return Change.Conflict<CrewWatch>(HasEnded);
        var now = clock.GetCurrentInstant();
        watch.DueAt = now + watch.Interval;
        var told = await HearAsync(watch, CheckInKind.Fine, by, now, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        Send(told);
        return Change.Done(watch);
    }

    /// <summary>The crew is out: the watch ends. Those who were written to are told.</summary>
    public async Task<Change<CrewWatch>> EndAsync(Guid watchId, Signer by, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await store.LockAsync(watchId, cancellation) is not { } watch)
            return Change.NotFound<CrewWatch>();
        if (watch.EndedAt is not null)
            return Change.Done(watch);
        var now = clock.GetCurrentInstant();
        watch.EndedAt = now;
        var told = await HearAsync(watch, CheckInKind.Out, by, now, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        Send(told);
        return Change.Done(watch);
    }

    /// <summary>
    /// Somebody takes a missed check-in over: nobody else is called for it. The watch goes on: a crew that is not heard
    /// from within another interval is looked for again.
    /// </summary>
    public Task<Change<CrewWatch>> AcknowledgeAsync(Guid watchId, Signer by, CancellationToken cancellation) =>
        AcknowledgeAsync(watchId, call: null, by, cancellation);

    /// <summary>The same in answer to a call: for its missed check-in, and for none that was missed after it.</summary>
    public async Task<Change<CrewWatch>> AcknowledgeAsync(
        Guid watchId, AlarmCall? call, Signer by, CancellationToken cancellation)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        if (await store.LockAsync(watchId, cancellation) is not { } watch)
            return Change.NotFound<CrewWatch>();
        if (watch.Escalating is not { } missed || (call is not null && missed.Id != call.MissedId))
        {
            return watch.Missed.Any(one => one.ClearedAt is null)
                ? Change.Done(watch)
                : Change.Conflict<CrewWatch>("No check-in is missed, so there is nothing to take over.");
        }
        var now = clock.GetCurrentInstant();
        (missed.AcknowledgedAt, missed.AcknowledgedBy) = (now, by.Name);
        watch.DueAt = now + watch.Interval;
        var told = await TellOthersAsync(watch, missed, call?.Place, by, now, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        Send(told);
        return Change.Done(watch);
    }

    /// <summary>
    /// Everybody else who was called is told who sees to it, so that not everybody drives out, nor nobody. Contacts are
    /// told apart by their place and by who they are: two may have one name.
    /// </summary>
    /// <returns>Whether anybody is told.</returns>
    private async Task<bool> TellOthersAsync(
        CrewWatch watch, MissedCheckIn missed, int? place, Signer by, Instant now, CancellationToken cancellation)
    {
        var called = missed.Calls.Select(call => call.Place).ToHashSet();
        var others = watch.Contacts.Where(contact => called.Contains(contact.Place) && contact.Place != place
            && (by.PersonId is null || contact.PersonId != by.PersonId)).ToList();
        if (others.Count == 0)
            return false;
        var notice = TakenOverNotice.Of(await store.SceneAsync(watch, cancellation), watch, missed);
        await WriteAsync($"taken-over:{missed.Id}", NoticeKinds.TakenOver, others, notice, now, cancellation);
        return true;
    }

    private async Task WriteAsync(
        string key, string kind, List<WatchContact> contacts, Notice notice, Instant now,
        CancellationToken cancellation)
    {
        foreach (var (contact, reachable) in await WatchContact.ReachableAsync(db, contacts, cancellation))
            db.AddRange(Message.EveryWay($"{key}:{contact.Place}", kind, reachable, notice, now, mail.Value));
    }

    /// <returns>Whether anybody is told.</returns>
    private async Task<bool> HearAsync(
        CrewWatch watch, CheckInKind kind, Signer by, Instant now, CancellationToken cancellation)
    {
        var checkIn = new CheckIn
        {
            WatchId = watch.Id,
            Number = watch.CheckIns.Count,
            Kind = kind,
            At = now,
            ById = by.PersonId,
            By = by.Name,
        };
        db.Add(checkIn);
        var missed = watch.Missed.Where(one => one.ClearedAt is null).ToList();
        foreach (var one in missed)
            one.ClearedAt = now;
        var places = missed.SelectMany(one => one.Calls).Select(call => call.Place).ToHashSet();
        if (places.Count == 0)
            return false;
        var scene = await store.SceneAsync(watch, cancellation);
        var notice = CrewFineNotice.Of(scene, watch, missed.Min(one => one.DueAt), checkIn);
        await WriteAsync(
            $"crew-fine:{checkIn.Id}", NoticeKinds.CrewFine,
            [.. watch.Contacts.Where(contact => places.Contains(contact.Place))], notice, now, cancellation);
        return true;
    }

    private void Send(bool told)
    {
        if (!told)
            return;
        var organization = current.Id!.Value;
        jobs.Enqueue<OutboxJob>(job => job.SendAsync(organization, CancellationToken.None));
    }
}
