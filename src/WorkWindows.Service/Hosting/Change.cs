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

    /// <summary>It can be read, but what it asks for is never done.</summary>
    Unprocessable,

    /// <summary>Someone else may do it, and this caller may not.</summary>
    Forbidden,
}

/// <summary>What came of a change that someone asked for.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Value">What is stored now, when it was done.</param>
/// <param name="Faults">What is not accepted, when it was refused.</param>
/// <param name="Reason">What stands against it, when there is a conflict or it is not done.</param>
/// <param name="Details">What else the answer tells a caller when there is a conflict or it is not done.</param>
public sealed record Change<T>(
    ChangeOutcome Outcome, T? Value, FieldFaults? Faults, string? Reason,
    IReadOnlyDictionary<string, object?>? Details = null)
{
    /// <summary>Why it was not done, a sentence each; none when it was.</summary>
    public IReadOnlyList<string> Complaints =>
    [
        .. Faults?.Errors.Values.SelectMany(messages => messages) ?? [],
        .. Reason is { } reason ? new[] { reason } : [],
    ];

    /// <summary>The answer to the caller, where a change that was done is answered with what is stored now.</summary>
    public Results<Ok<TView>, NotFound, ValidationProblem, ProblemHttpResult> Answer<TView>(Func<T, TView> view) =>
        Outcome switch
        {
            ChangeOutcome.Done => TypedResults.Ok(view(Value!)),
            ChangeOutcome.NotFound => TypedResults.NotFound(),
            ChangeOutcome.Refused => Faults!.ToProblem(),
            ChangeOutcome.Conflict => ConflictProblem(),
            ChangeOutcome.Unprocessable => UnprocessableProblem(),
            ChangeOutcome.Forbidden => ForbiddenProblem(),
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
            ChangeOutcome.Unprocessable => UnprocessableProblem(),
            ChangeOutcome.Forbidden => ForbiddenProblem(),
        };

    /// <summary>The answer to the caller, where there is nothing left to show.</summary>
    public Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult> AnswerNothing() => Outcome switch
    {
        ChangeOutcome.Done => TypedResults.NoContent(),
        ChangeOutcome.NotFound => TypedResults.NotFound(),
        ChangeOutcome.Refused => Faults!.ToProblem(),
        ChangeOutcome.Conflict => ConflictProblem(),
        ChangeOutcome.Unprocessable => UnprocessableProblem(),
        ChangeOutcome.Forbidden => ForbiddenProblem(),
    };

    private ProblemHttpResult ConflictProblem() => TypedResults.Problem(
        Reason, statusCode: StatusCodes.Status409Conflict, title: "What is stored stands against this.",
        extensions: Details);

    private ProblemHttpResult ForbiddenProblem() => TypedResults.Problem(
        Reason, statusCode: StatusCodes.Status403Forbidden, title: "This is not yours to do. Nothing was stored.");

    private ProblemHttpResult UnprocessableProblem() => TypedResults.Problem(
        Reason, statusCode: StatusCodes.Status422UnprocessableEntity, title: "This is not done. Nothing was stored.",
        extensions: Details);
}

/// <summary>The ends that a change may come to.</summary>
public static class Change
{
    public static Change<T> Done<T>(T value) => new(ChangeOutcome.Done, value, null, null);

    public static Change<T> NotFound<T>() => new(ChangeOutcome.NotFound, default, null, null);

    public static Change<T> Refused<T>(FieldFaults faults) => new(ChangeOutcome.Refused, default, faults, null);

    /// <param name="reason">What stands against it.</param>
    /// <param name="details">Members of the answer that say it to a program.</param>
    public static Change<T> Conflict<T>(string reason, params (string Name, object? Value)[] details) => new(
        ChangeOutcome.Conflict, default, null, reason, details.ToDictionary(one => one.Name, one => one.Value));

    public static Change<T> Forbidden<T>(string reason) => new(ChangeOutcome.Forbidden, default, null, reason);

    /// <param name="reason">Why it is never done.</param>
    /// <param name="details">Members of the answer that say it to a program.</param>
    public static Change<T> Unprocessable<T>(string reason, params (string Name, object? Value)[] details) => new(
        ChangeOutcome.Unprocessable, default, null, reason, details.ToDictionary(one => one.Name, one => one.Value));
}
