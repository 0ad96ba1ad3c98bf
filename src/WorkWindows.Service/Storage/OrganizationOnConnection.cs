using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace WorkWindows.Service.Storage;

/// <summary>Tells every connection, as it opens, which organization it works for; empty when there is none.</summary>
public sealed class OrganizationOnConnection(CurrentOrganization organization) : DbConnectionInterceptor
{
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = Command(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = Command(connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    private DbCommand Command(DbConnection connection)
    {
        var command = connection.CreateCommand();
        command.CommandText = $"select set_config('{CurrentOrganization.Setting}', @organization, false)";
        var parameter = command.CreateParameter();
        parameter.ParameterName = "organization";
        parameter.Value = organization.Id?.ToString() ?? "";
        command.Parameters.Add(parameter);
        return command;
    }
}
