using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace WorkWindows.Service.Hosting;

/// <summary>Answers failures that a caller can do something about; others become a bare 500 and a log entry.</summary>
internal sealed class Problems(IProblemDetailsService writer) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(
        HttpContext context, Exception exception, CancellationToken cancellation)
    {
        if (Describe(exception) is not { } problem)
            return false;
        context.Response.StatusCode = problem.Status!.Value;
        return await writer.TryWriteAsync(new() { HttpContext = context, ProblemDetails = problem });
    }

    private static ProblemDetails? Describe(Exception exception) => exception switch
    {
        BadHttpRequestException { InnerException: JsonException json } => JsonFaults.Describe(json),
        BadHttpRequestException request => Problem(request.StatusCode, "The request cannot be read.", request.Message),
        DbUpdateConcurrencyException => Problem(
            409, "Someone else changed this meanwhile.", "Read it again and repeat the change."),
        _ => Describe(InnerMost(exception)),
    };

    private static ProblemDetails? Describe(NpgsqlException? fault) => fault switch
    {
        PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } unique => Problem(
            409, "This exists already.", $"Another row of {unique.TableName} has the same key ({unique.ConstraintName})."),
        PostgresException { SqlState: PostgresErrorCodes.ForeignKeyViolation } reference => Problem(
            409, "This refers to something that is not there, or is still referred to.",
            $"The reference is {reference.ConstraintName} of {reference.TableName}."),
        PostgresException { SqlState: PostgresErrorCodes.CheckViolation } check => Problem(
            409, "This breaks a rule of the database.", $"The rule is {check.ConstraintName} of {check.TableName}."),
        PostgresException { SqlState: PostgresErrorCodes.ExclusionViolation } both => Problem(
            409, "This is taken on that day.", $"Another row of {both.TableName} has it ({both.ConstraintName})."),
        PostgresException { SqlState: PostgresErrorCodes.CharacterNotInRepertoire } => Problem(
            400, "The request cannot be stored.", "A text in it holds the character U+0000; leave it out."),
        PostgresException { IsTransient: false } or null => null,
        _ => Problem(503, "The database does not answer.", "Nothing was stored. Try again in a moment."),
    };

    private static NpgsqlException? InnerMost(Exception? exception) =>
        exception is null ? null : InnerMost(exception.InnerException) ?? exception as NpgsqlException;

    private static ProblemDetails Problem(int status, string title, string detail) =>
        new() { Status = status, Title = title, Detail = detail };
}

internal static class ProblemServices
{
    public static void AddProblems(this IServiceCollection services)
    {
        services.AddProblemDetails();
        services.AddExceptionHandler<Problems>();
    }
}
