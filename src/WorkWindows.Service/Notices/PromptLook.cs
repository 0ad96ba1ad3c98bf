using Hangfire;
using NodaTime;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Weather;

namespace WorkWindows.Service.Notices;

/// <summary>
/// Has an organization's tasks looked at at once and not at night: what was changed may close a day on which a crew is
/// at work.
/// </summary>
public sealed class PromptLook(WorkWindowsDb db, IBackgroundJobClient jobs, CurrentOrganization current, IClock clock)
{
    private bool _isNoted;

    /// <summary>All tasks are to be looked at. Stored by the caller in the transaction of the change.</summary>
    public void Note() => Note(isWhole: true, new([], [], []));

    /// <summary>The same for the tasks that the change touches; nothing when nothing has changed.</summary>
    public void Note(WeatherChange change)
    {
        if (!change.IsEmpty)
            Note(isWhole: false, change);
    }

    /// <summary>
    /// Begins the look once the change is stored. Where this fails, <see cref="LookRound"/> does it within a minute.
    /// </summary>
    public void Enqueue()
    {
        if (!_isNoted)
            return;
        _isNoted = false;
        var organization = current.Id!.Value;
        jobs.Enqueue<LookJob>(job => job.RunAsync(organization, CancellationToken.None));
    }

    private void Note(bool isWhole, WeatherChange change)
    {
        _isNoted = true;
        db.Add(new DueLook
        {
            NotedAt = clock.GetCurrentInstant(),
            IsWhole = isWhole,
            Records = [.. change.Records.Order()],
            Outlooks = [.. change.Outlooks.Order()],
            Parcels = [.. change.Parcels.Order()],
        });
    }
}
