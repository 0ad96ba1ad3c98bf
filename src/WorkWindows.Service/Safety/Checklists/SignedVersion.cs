using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>What a release asks of a signature.</summary>
/// <param name="TaskId">The task.</param>
/// <param name="Day">The day in the property's zone.</param>
/// <param name="Version">The version of the list that was acknowledged.</param>
/// <param name="PersonId">Who signed.</param>
/// <param name="Person">The name of whoever signed.</param>
/// <param name="ByConsultant">Whether it was a consultant.</param>
/// <param name="SignedAt">By the clock of the phone.</param>
/// <param name="InsteadBecause">Why a consultant released it in place of the crew lead; null otherwise.</param>
public sealed record SignedVersion(
    Guid TaskId, LocalDate Day, string Version, Guid PersonId, string Person, bool ByConsultant, Instant SignedAt,
    string? InsteadBecause = null)
{
    /// <returns>The signatures of the days, in the order in which they were received.</returns>
    internal static async Task<ILookup<(Guid Task, LocalDate Day), SignedVersion>> OfAsync(
        WorkWindowsDb db, LocalDate first, LocalDate last, CancellationToken cancellation)
    {
        var rows = await db.ChecklistSignatures.Where(row => row.Day >= first && row.Day <= last)
            .OrderBy(row => row.ReceivedAt).ThenBy(row => row.Id)
            .Select(row => new SignedVersion(
                row.TaskId, row.Day, row.Version, row.PersonId, row.Person, row.Role == Role.Consultant, row.SignedAt,
                row.InsteadBecause))
            .ToListAsync(cancellation);
        return rows.ToLookup(row => (row.TaskId, row.Day));
    }
}
