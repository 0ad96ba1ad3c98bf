using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>Brings the records of an organization's stations up to date.</summary>
public sealed class ObservationRound(
    WorkWindowsDb db, CurrentOrganization current, ObservationHandler observations, StationFetches fetches,
    StationAssignment stations, OutageWatch outages, PromptLook look)
{
    /// <exception cref="AggregateException">Stations failed, after all others were asked for.</exception>
    public async Task RunAsync(Guid organizationId, CancellationToken cancellation)
    {
        current.Set(organizationId);
        var before = await stations.UsedAsync(cancellation);
        try
        {
            try
            {
                await observations.FetchAsync(cancellation);
                await AssignAsync(before, cancellation);
            }
            finally
            {
                // What could not be stored is not stored along with the mail.
                db.ChangeTracker.Clear();
                await outages.TellAsync([WeatherFeed.Observations], cancellation);
            }
            fetches.ThrowIfAnyFailed();
        }
        finally
        {
            // What is stored is not found new again by the next round, however this one ends.
            look.Enqueue();
        }
    }

    /// <summary>A record that has grown, or stopped, may make another station the nearest usable one.</summary>
    private async Task AssignAsync(StationsInUse before, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, current, cancellation);
        look.Note(WeatherChange.OfParcels(await stations.AssignAsync(before, cancellation)));
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
    }
}
