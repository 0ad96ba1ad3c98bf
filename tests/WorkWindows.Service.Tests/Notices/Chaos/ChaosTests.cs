using System.Diagnostics;
using NodaTime;
using Shouldly;
using WorkWindows.Service.Notices;

namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>
/// Everything that can fail between a stored message and its reader does, at points drawn from a seed.
/// </summary>
public sealed class ChaosTests
{
    private const int Messages = 300;
    private const int Seed = 20260202;

    /// <summary>A lease of five minutes ends after five seconds.</summary>
    private const int Speed = 60;

    /// <summary>How long a worker waits for the mail server, in real seconds.</summary>
    private const int PatienceSeconds = 1;

    /// <summary>On a machine that is busy with other things; alone it takes a fraction of that.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(4);

    [Fact]
    public async Task EveryMessageIsAccepted_AndComesAgainOnlyWhereNobodyCouldTell()
    {
        var watch = Stopwatch.StartNew();
        var origin = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        var ledger = new Ledger();
        await using var database = new ChaosDatabase();
        await database.StartAsync();
        var organizations = new[]
        {
            await database.AddAsync(Enumerable.Range(0, Messages).Where(number => number % 3 != 0), origin),
            await database.AddAsync(Enumerable.Range(0, Messages).Where(number => number % 3 == 0), origin),
        };

        await using (var workers = new WorkerFleet(database, ledger, origin, Speed, PatienceSeconds))
        {
            await using var server = new ChaosMailServer(
                workers.Ports, new Fates(Messages, Seed), TimeSpan.FromSeconds(PatienceSeconds), ledger, workers);
            workers.Start();
            await UntilAsync(() => database.IsAllSentAsync(organizations));
        }

        var rows = new List<Message>();
        foreach (var organization in organizations)
            rows.AddRange(await database.RowsAsync(organization));
        Check(rows, ledger);
        Say(rows, ledger, watch.Elapsed);
    }

    private static void Check(List<Message> rows, Ledger ledger)
    {
        rows.Count.ShouldBe(Messages);
        rows.ShouldAllBe(row => row.SentAt != null && row.DeadAt == null && row.LeasedUntil == null);
        var accepted = ledger.Accepted.ToLookup(one => one.Message);
        foreach (var row in rows)
        {
            var mails = accepted[int.Parse(row.DedupeKey)].ToList();
            mails.ShouldNotBeEmpty($"{row.Subject} was lost");
            mails.ShouldAllBe(mail => mail.MessageId == row.MessageId);
            // One of them may be marked, and not always the last that the server took.
            mails.Count(mail => ledger.WhyUnmarked(mail, row.Id) is null).ShouldBeLessThanOrEqualTo(1, row.Subject);
        }
        ledger.Outages.ShouldBe(Fates.Of(Fate.RestartDatabase));
        ledger.Kills.ShouldBeGreaterThanOrEqualTo(
            Fates.Of(Fate.KillBeforeAcceptance) + Fates.Of(Fate.KillAfterAcceptance));
        Repeats(ledger).Count(mail => mail.Fate == Fate.DropAfterAcceptance)
            .ShouldBe(Fates.Of(Fate.DropAfterAcceptance), "the server kept each of them, and the worker could not know");
    }

    /// <summary>Acceptances that were followed by another of the same message.</summary>
    private static IEnumerable<Acceptance> Repeats(Ledger ledger) =>
        ledger.Accepted.GroupBy(mail => mail.Message).SelectMany(mails => mails.SkipLast(1));

    private static void Say(List<Message> rows, Ledger ledger, TimeSpan time)
    {
        var ids = rows.ToDictionary(row => int.Parse(row.DedupeKey), row => row.Id);
        var causes = Repeats(ledger).GroupBy(mail => ledger.WhyUnmarked(mail, ids[mail.Message])).Select(cause => $"{cause.Count()} {cause.Key}");
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{Messages} messages, {ledger.Accepted.Count} accepted in {time.TotalSeconds:0} s; {ledger.Kills} kills, "
            + $"{ledger.Outages} restarts of the database; repeats: {string.Join(", ", causes)}.");
    }

    private static async Task UntilAsync(Func<Task<bool>> isDone)
    {
        using var polls = new PeriodicTimer(TimeSpan.FromMilliseconds(200));
        for (var waited = Stopwatch.StartNew(); !await isDone(); await polls.WaitForNextTickAsync())
            waited.Elapsed.ShouldBeLessThan(Longest);
    }
}
