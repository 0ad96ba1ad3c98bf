using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace WorkWindows.Service.Tests.Storage;

/// <summary>Counts the commands that are sent to the database.</summary>
public sealed class DatabaseCalls : DbCommandInterceptor
{
    /// <summary>What a page may ask for at most.</summary>
    public const int Most = 12;

    private int _count;

    /// <returns>How many commands an action sends.</returns>
    public async Task<int> OfAsync(Func<Task> action)
    {
        Interlocked.Exchange(ref _count, 0);
        await action();
        return Volatile.Read(ref _count);
    }

    public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result,
        CancellationToken cancellationToken = default)
    {
        Interlocked.Increment(ref _count);
        return base.ReaderExecutingAsync(command, eventData, result, cancellationToken);
    }

    public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result,
        CancellationToken cancellationToken = default)
    {
        Interlocked.Increment(ref _count);
        return base.NonQueryExecutingAsync(command, eventData, result, cancellationToken);
    }

    public override ValueTask<InterceptionResult<object>> ScalarExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<object> result,
        CancellationToken cancellationToken = default)
    {
        Interlocked.Increment(ref _count);
        return base.ScalarExecutingAsync(command, eventData, result, cancellationToken);
    }
}
