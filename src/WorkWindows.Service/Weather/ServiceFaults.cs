using Polly;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Service.Weather;

/// <summary>Faults of the weather service and of the way to it.</summary>
internal static class ServiceFaults
{
    /// <returns>Whether the next round may succeed, and another station meanwhile.</returns>
    public static bool IsPassing(Exception fault, CancellationToken cancellation) =>
        fault is FeedException or HttpRequestException
            or ExecutionRejectedException
        || (fault is OperationCanceledException && !cancellation.IsCancellationRequested);
}
