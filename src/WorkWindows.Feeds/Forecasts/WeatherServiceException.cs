using System.Net;

namespace WorkWindows.Feeds.Forecasts;

/// <summary>The weather service answered, and the answer was a refusal or not what it documents.</summary>
public sealed class WeatherServiceException : Exception
{
    public WeatherServiceException()
    {
    }

    public WeatherServiceException(string message)
        : base(message)
    {
    }

    public WeatherServiceException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }

    public WeatherServiceException(HttpStatusCode status, string? problem, string? title, string? detail)
        : base(
            $"The weather service answered {(int)status} {title ?? $"{status}"}: {detail ?? "no detail given"}") =>
        (Status, Problem, Title, Detail) = (status, problem, title, detail);

    public HttpStatusCode Status { get; }

    /// <summary>The problem's name, such as InvalidPoint, or null if the reply names none.</summary>
    public string? Problem { get; }

    public string? Title { get; }

    public string? Detail { get; }
}
