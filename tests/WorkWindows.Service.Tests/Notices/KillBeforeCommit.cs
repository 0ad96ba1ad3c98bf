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
        var backend = ((NpgsqlConnection)transaction.Connection!).ProcessID;
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync(cancellationToken);
        await using var command = new NpgsqlCommand($"select pg_terminate_backend({backend}, 5000)", connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
        return result;
    }
}
