using Hangfire;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Weather;

/// <summary>
/// Starts the rounds of all organizations, each as a job of its own: where one fails, the others go on.
/// </summary>
public sealed class WeatherRounds(WorkWindowsDb db, IBackgroundJobClient jobs)
{
    public async Task StartForecastsAsync(CancellationToken cancellation)
    {
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellation))
            jobs.Enqueue<ForecastRoundJob>(job => job.RunAsync(id, CancellationToken.None));
    }

    public async Task StartObservationsAsync(CancellationToken cancellation)
    {
        foreach (var (id, _) in await ScheduledOrganization.AllAsync(db, cancellation))
            jobs.Enqueue<ObservationRoundJob>(job => job.RunAsync(id, CancellationToken.None));
    }
}

/// <summary>Starts the rounds of forecasts.</summary>
public sealed class ForecastJob(WeatherRounds rounds)
{
    public const string Id = "forecasts";

    public Task RunAsync(CancellationToken cancellation) => rounds.StartForecastsAsync(cancellation);
}

/// <summary>Starts the rounds of observations.</summary>
public sealed class ObservationJob(WeatherRounds rounds)
{
    public const string Id = "observations";

    public Task RunAsync(CancellationToken cancellation) => rounds.StartObservationsAsync(cancellation);
}

public sealed class ForecastRoundJob(ForecastRound round)
{
    /// <remarks>Not tried again when it fails: the next hour does that.</remarks>
    [AutomaticRetry(Attempts = 0)]
    [DisableConcurrentExecution("forecasts:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        round.RunAsync(organizationId, cancellation);
}

public sealed class ObservationRoundJob(ObservationRound round)
{
    [DisableConcurrentExecution("observations:{0}", 60)]
    public Task RunAsync(Guid organizationId, CancellationToken cancellation) =>
        round.RunAsync(organizationId, cancellation);
}
