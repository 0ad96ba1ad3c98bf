using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds;
using WorkWindows.Service.Imports;

namespace WorkWindows.Service.Hosting;

/// <summary>What an import did with the rows of its file.</summary>
/// <param name="Created">Rows that were not there before.</param>
/// <param name="Updated">Rows that were there and read differently.</param>
/// <param name="Unchanged">Rows that were there as the file has them.</param>
public sealed record ImportCounts(int Created, int Updated, int Unchanged)
{
    internal static ImportCounts Of(IReadOnlyCollection<EntityState> rows) => new(
        rows.Count(state => state == EntityState.Added),
        rows.Count(state => state == EntityState.Modified),
        rows.Count(state => state == EntityState.Unchanged));
}

/// <summary>What came of an import: all of the file, or nothing and everything that is wrong in it.</summary>
/// <param name="Stored">What was stored; null when the file was refused.</param>
/// <param name="Faults">What is wrong in the file.</param>
public sealed record ImportOutcome<T>(T? Stored, FaultReport Faults) where T : class
{
    /// <summary>What would be stored, row by row, where a preview was asked for; nothing was stored then.</summary>
    public IReadOnlyList<RowChange> Changes { get; init; } = [];

    public Results<Ok<T>, ProblemHttpResult> Answer() =>
        Stored is { } stored ? TypedResults.Ok(stored) : ImportProblems.Refusal(Faults);
}

/// <summary>The ends that an import may come to.</summary>
public static class ImportOutcome
{
    public static ImportOutcome<T> Stored<T>(T stored) where T : class => new(stored, FaultReport.None);

    public static ImportOutcome<T> Refused<T>(FaultReport faults) where T : class => new(null, faults);
}

internal static class ImportProblems
{
    public static ProblemHttpResult Refusal(FaultReport report) => TypedResults.Problem(
        $"Faults: {report.Faults.Length + report.More}. Nothing was stored.",
        statusCode: StatusCodes.Status422UnprocessableEntity,
        title: "The file is not accepted.",
        extensions: new Dictionary<string, object?>
        {
            ["faults"] = report.Faults.Select(fault => new
            {
                fault.Line,
                fault.Item,
                fault.Field,
                fault.Value,
                fault.Accepted,
            }),
            ["more"] = report.More,
        });
}
