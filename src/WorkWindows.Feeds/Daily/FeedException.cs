using System.Net;
using NodaTime;

namespace WorkWindows.Feeds.Daily;

/// <summary>A feed gave nothing that can be used. It passes: another round may succeed.</summary>
public abstract class FeedException(string message, Duration? retryAfter, Exception? inner) : Exception(message, inner)
{
    /// <summary>How long to wait before asking again, where the server or its budget says so.</summary>
    public Duration? RetryAfter { get; } = retryAfter;
}

/// <summary>The feed answered, and the answer was a refusal.</summary>
public sealed class FeedRefusedException(
    HttpStatusCode status, string? problem, string? title, string? detail, Duration? retryAfter)
    : FeedException(
        $"The feed answered {(int)status} {title ?? $"{status}"}: {detail ?? "no detail given"}", retryAfter, null)
{
    public HttpStatusCode Status { get; } = status;

    /// <summary>The problem's name, such as InvalidPoint, or null if the reply names none.</summary>
    public string? Problem { get; } = problem;

    public string? Title { get; } = title;

    public string? Detail { get; } = detail;
}

/// <summary>A reply of which nothing can be used.</summary>
public sealed class FeedFormatException(string message, Exception? inner = null) : FeedException(message, null, inner);

/// <summary>No reply: the connection failed, the reply took too long, or its host is left alone for a while.</summary>
public sealed class FeedUnreachableException(string message, Duration? retryAfter, Exception? inner)
    : FeedException(message, retryAfter, inner);

/// <summary>Not asked: the requests that a host is sent in a day are used up.</summary>
public sealed class FeedBudgetException(string host, int requestsADay, Duration retryAfter)
    : FeedException($"{host} has been sent its {requestsADay} requests of this UTC day.", retryAfter, null);
