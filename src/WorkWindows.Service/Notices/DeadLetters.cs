using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Gives messages up, marks addresses that bounce, and tells consultants of whom that keeps from stopping.
/// </summary>
public sealed partial class DeadLetters(
    WorkWindowsDb db, CurrentOrganization current, IOptions<MailOptions> mail, IOptions<SiteOptions> site, IClock clock,
    ILogger<DeadLetters> logger)
{
    /// <summary>What keeps people from harm: somebody must know when it reaches nobody.</summary>
    private static readonly HashSet<string> MustArrive =
        [NoticeKinds.StopWork, NoticeKinds.DoNotStart, NoticeKinds.MissedCheckIn];

    /// <summary>
    /// There is no such mailbox: the message is given up, and later ones to the address are not sent.
    /// </summary>
    /// <param name="message">A tracked row.</param>
    /// <param name="code">The status.</param>
    /// <param name="reason">What happened, without anything personal.</param>
    public async Task AddressGoneAsync(Message message, string code, string reason)
    {
        await using var transaction = await BeginAsync();
        if (!await IsOursAsync(message))
            return;
        var address = BouncingAddress.Normalize(message.ToAddress);
        if (!await db.BouncingAddresses.AnyAsync(bounce => bounce.Address == address))
        {
            db.Add(new BouncingAddress { Address = address, Code = code, BouncedAt = clock.GetCurrentInstant() });
            await db.SaveChangesAsync();
        }
        await GiveUpAsync(message, GivenUp.AddressBounces, reason);
        await transaction.CommitAsync();
    }

    /// <param name="message">A tracked row.</param>
    /// <param name="why">Why, for programs.</param>
    /// <param name="reason">Why, without anything personal.</param>
    public async Task GiveUpAsync(Message message, GivenUp why, string reason)
    {
        await using var own = db.Database.CurrentTransaction is null ? await BeginAsync() : null;
        if (!await IsOursAsync(message))
            return;
        var now = clock.GetCurrentInstant();
        message.GiveUp(now, why, reason);
        // What must not be missed goes by mail too when it goes to a webhook.
        if (MustArrive.Contains(message.Kind) && message.Channel == NoticeChannels.Mail && why != GivenUp.Superseded)
            await TellAsync(message, now);
        await db.SaveChangesAsync();
        if (own is not null)
            await own.CommitAsync();
        if (why is GivenUp.Failed or GivenUp.AddressBounces)
            LogGivenUp(message.Id, message.Kind, message.Attempts, reason);
        else
            LogDropped(message.Id, message.Kind, reason);
    }

    /// <summary>A worker that gives a message up must hold it still.</summary>
    private async Task<bool> IsOursAsync(Message message) =>
        message.LeasedUntil is null || await MessageLease.EndAsync(db, message);

    /// <summary>Once a day for an address that bounces, or once a message that has another cause.</summary>
    private async Task TellAsync(Message message, Instant now)
    {
        var bounces = await BouncingAddresses.ReadAsync(db, CancellationToken.None);
        var told = (await ConsultantsAsync())
            .ConvertAll(one => one.Mail is { } mail && bounces.Of(mail) is not null ? one with { Mail = null } : one);
        told.RemoveAll(consultant => consultant is { Mail: null, Webhook: null });
        var bounce = message.GivenUp == GivenUp.AddressBounces ? bounces.Of(message.ToAddress) : null;
        if (told.Count == 0)
            LogNobody(message.Id);
        var organization = await db.Organizations.AsNoTracking().SingleAsync();
        var person = await db.People.AsNoTracking().SingleOrDefaultAsync(row => row.Id == message.RecipientId);
        var zone = DateTimeZoneProviders.Tzdb[organization.TimeZone];
        var notice = UnreachableNotice.Of(
            new(organization.Name, organization.PostalAddress), zone,
            new(message, person?.DisplayName, person?.PhoneNumber, bounce?.Code), site.Value.PageAddress("/messages"));
        foreach (var consultant in told)
        {
            var key = bounce is null
                ? $"unreachable:{message.Id}:{consultant.PersonId}"
                : $"unreachable:{bounce.Id}:{now.InZone(zone).Date:R}:{consultant.PersonId}";
            var twin = key + Message.WebhookSuffix;
            if (!await db.Messages.AnyAsync(row => row.DedupeKey == key || row.DedupeKey == twin))
                db.AddRange(Message.EveryWay(key, NoticeKinds.Unreachable, consultant, notice, now, mail.Value));
        }
    }

    private async Task<List<Reachable>> ConsultantsAsync()
    {
        var consultants = await db.People.AsNoTracking().Where(person => person.Role == Role.Consultant)
            .OrderBy(person => person.Id).ToListAsync();
        var webhooks = await Reachable.WebhooksAsync(
            db, consultants.Select(person => (Guid?)person.Id), CancellationToken.None);
        return consultants.ConvertAll(person => new Reachable(
            person.Id, person.Email, webhooks.GetValueOrDefault(person.Id)));
    }

    /// <summary>One at a time in an organization: an address is marked once, and told of once.</summary>
    private async Task<IDbContextTransaction> BeginAsync()
    {
        var transaction = await db.Database.BeginTransactionAsync();
        await db.Database.ExecuteSqlAsync(
            $"select pg_advisory_xact_lock(hashtextextended({$"dead-letters:{current.Id}"}, 0))");
        return transaction;
    }

    [LoggerMessage(LogLevel.Error, "Message {MessageId} ({Kind}) given up after attempt {Attempt}: {Reason}")]
    private partial void LogGivenUp(Guid messageId, string kind, int attempt, string reason);

    [LoggerMessage(LogLevel.Information, "Message {MessageId} ({Kind}) not sent: {Reason}")]
    private partial void LogDropped(Guid messageId, string kind, string reason);

    [LoggerMessage(LogLevel.Error, "Message {MessageId} reaches nobody, and no consultant has an address to be told")]
    private partial void LogNobody(Guid messageId);
}
