using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

internal static class DecisionEndpoints
{
    /// <param name="Id">The decision.</param>
    /// <param name="EvaluatedAt">When it was made.</param>
    /// <param name="FirstDay">The first day decided about.</param>
    /// <param name="LastDay">The last one, included.</param>
    /// <param name="Hash">SHA-256 of its content.</param>
    /// <param name="SnapshotHash">SHA-256 of the weather it was made from.</param>
    /// <param name="PackHashes">SHA-256 of the rule packs, national first.</param>
    public sealed record DecisionView(
        Guid Id, Instant EvaluatedAt, LocalDate FirstDay, LocalDate LastDay, string Hash, string SnapshotHash,
        IReadOnlyList<string> PackHashes);

    /// <param name="Id">The decision.</param>
    /// <param name="Hash">What was decided.</param>
    /// <param name="ReplayedHash">What the same inputs give now.</param>
    /// <param name="IsSame">Whether these are equal; if not, something was tampered with.</param>
    public sealed record ReplayView(Guid Id, string Hash, string ReplayedHash, bool IsSame);

    public static void MapDecisions(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/tasks/{id:guid}/decisions", ListAsync).WithTags("Decisions").RequireAuthorization()
            .WithSummary("Lists what was decided about a task, the newest first.");
        app.MapGet("/api/decisions/{id:guid}/replay", ReplayAsync).WithTags("Decisions").RequireAuthorization()
            .WithSummary("Evaluates a decision again from what it was made from.");
    }

    private static async Task<Results<Ok<List<DecisionView>>, NotFound>> ListAsync(
        Guid id, VisibleTasks visible, WorkWindowsDb db, CancellationToken cancellation) =>
        await visible.All.AnyAsync(task => task.Id == id, cancellation)
            ? TypedResults.Ok(await db.Decisions.Where(decision => decision.TaskId == id)
                .OrderByDescending(decision => decision.EvaluatedAt)
                .Select(decision => new DecisionView(
                    decision.Id, decision.EvaluatedAt, decision.FirstDay, decision.LastDay, decision.Hash,
                    decision.SnapshotHash, decision.PackHashes))
                .ToListAsync(cancellation))
            : TypedResults.NotFound();

    private static async Task<Results<Ok<ReplayView>, NotFound>> ReplayAsync(
        Guid id, VisibleTasks visible, WorkWindowsDb db, DecisionStore decisions, CancellationToken cancellation)
    {
        var decision = await db.Decisions.AsNoTracking().SingleOrDefaultAsync(
            row => row.Id == id && visible.All.Any(task => task.Id == row.TaskId), cancellation);
        if (decision is null)
            return TypedResults.NotFound();
        var replayed = await decisions.ReplayAsync(decision, cancellation);
        return TypedResults.Ok(new ReplayView(id, decision.Hash, replayed.Hash, replayed.Hash == decision.Hash));
    }
}
