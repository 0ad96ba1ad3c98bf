using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace WorkWindows.Service.Tests.Notices;

/// <summary>Ends the connection of a transaction when all has been written and nothing is stored yet.</summary>
internal sealed class KillBeforeCommit(string owner) : DbTransactionInterceptor
{
    public override async ValueTask<InterceptionResult> TransactionCommittingAsync(
        DbTransaction transaction, TransactionEventData eventData, InterceptionResult result,
        CancellationToken cancellationToken = default)
    {
        await KilledConnection.EndAsync(owner, transaction.Connection!, cancellationToken);
        return result;
    }
}

/// <summary>Ends the connection of a command before it is executed, the first few times.</summary>
internal sealed class KillBeforeCommand(string owner, string words, int times) : DbCommandInterceptor
{
    private int _left = times;

    public override async ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result,
        CancellationToken cancellationToken = default)
    {
        if (command.CommandText.Contains(words, StringComparison.Ordinal) && _left-- > 0)
            await KilledConnection.EndAsync(owner, command.Connection!, cancellationToken);
        return result;
    }
}

internal static class KilledConnection
{
    public static async Task EndAsync(string owner, DbConnection killed, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand(
            $"select pg_terminate_backend({((NpgsqlConnection)killed).ProcessID}, 5000)", connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }
}
