using Microsoft.AspNetCore.Http.HttpResults;

namespace WorkWindows.Service.Hosting;

/// <summary>How a change that someone asked for ended.</summary>
public enum ChangeOutcome
{
    Done,
    NotFound,

    /// <summary>Fields of the request are not accepted.</summary>
    Refused,

    /// <summary>What is stored stands against it.</summary>
    Conflict,
}

/// <summary>What came of a change that someone asked for.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Value">What is stored now, when it was done.</param>
/// <param name="Faults">What is not accepted, when it was refused.</param>
/// <param name="Reason">What stands against it, when there is a conflict.</param>
public sealed record Change<T>(ChangeOutcome Outcome, T? Value, FieldFaults? Faults, string? Reason)
{
    /// <summary>The answer to the caller, where a change that was done is answered with what is stored now.</summary>
    public Results<Ok<TView>, NotFound, ValidationProblem, ProblemHttpResult> Answer<TView>(Func<T, TView> view) =>
        Outcome switch
        {
            ChangeOutcome.Done => TypedResults.Ok(view(Value!)),
            ChangeOutcome.NotFound => TypedResults.NotFound(),
            ChangeOutcome.Refused => Faults!.ToProblem(),
            ChangeOutcome.Conflict => ConflictProblem(),
        };

    /// <summary>The answer to the caller, where what was created has an address.</summary>
    public Results<Created<TView>, NotFound, ValidationProblem, ProblemHttpResult> AnswerCreated<TView>(
        Func<T, TView> view, Func<T, string> address) =>
        Outcome switch
        {
            ChangeOutcome.Done => TypedResults.Created(address(Value!), view(Value!)),
            ChangeOutcome.NotFound => TypedResults.NotFound(),
            ChangeOutcome.Refused => Faults!.ToProblem(),
            ChangeOutcome.Conflict => ConflictProblem(),
        };

    /// <summary>The answer to the caller, where there is nothing left to show.</summary>
    public Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult> AnswerNothing() => Outcome switch
    {
        ChangeOutcome.Done => TypedResults.NoContent(),
        ChangeOutcome.NotFound => TypedResults.NotFound(),
        ChangeOutcome.Refused => Faults!.ToProblem(),
        ChangeOutcome.Conflict => ConflictProblem(),
    };

    private ProblemHttpResult ConflictProblem() => TypedResults.Problem(
        Reason, statusCode: StatusCodes.Status409Conflict, title: "What is stored stands against this.");
}

/// <summary>The ends that a change may come to.</summary>
public static class Change
{
    public static Change<T> Done<T>(T value) => new(ChangeOutcome.Done, value, null, null);

    public static Change<T> NotFound<T>() => new(ChangeOutcome.NotFound, default, null, null);

    public static Change<T> Refused<T>(FieldFaults faults) => new(ChangeOutcome.Refused, default, faults, null);

    public static Change<T> Conflict<T>(string reason) => new(ChangeOutcome.Conflict, default, null, reason);
}
