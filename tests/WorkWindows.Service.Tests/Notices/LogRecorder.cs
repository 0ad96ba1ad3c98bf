using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>Keeps the service's own log lines.</summary>
internal sealed class LogRecorder : ILoggerProvider, ILogger
{
    public ConcurrentQueue<string> Lines { get; } = new();

    public ILogger CreateLogger(string categoryName) =>
        categoryName.StartsWith("WorkWindows.", StringComparison.Ordinal) ? this : NullLogger.Instance;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

    public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

    public void Log<TState>(
        LogLevel logLevel, EventId eventId, TState state, Exception? exception,
        Func<TState, Exception?, string> formatter) => Lines.Enqueue($"{logLevel}: {formatter(state, exception)}");

    public void Dispose()
    {
    }
}
