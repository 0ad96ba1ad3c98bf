using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace WorkWindows.Service.Storage;

/// <summary>Healthy when the database answers and holds every migration that this version brings.</summary>
internal sealed class DatabaseReady(WorkWindowsDb db) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        var pending = await db.Database.GetPendingMigrationsAsync(cancellationToken);
        return pending.Any() ? HealthCheckResult.Unhealthy("Migrations are pending.") : HealthCheckResult.Healthy();
    }
}
