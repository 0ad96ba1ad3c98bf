using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices;

/// <summary>
/// What became of messages, for consultants and for the machine that reads the mailbox of the sender.
/// </summary>
internal static class MessageEndpoints
{
    private const int LargestReportMb = 5;
    private const int BytesPerMb = 1024 * 1024;

    private static readonly Dictionary<string, MessageState> States = Enum.GetValues<MessageState>()
        .ToDictionary(state => JsonNamingPolicy.KebabCaseLower.ConvertName($"{state}"));

    /// <param name="Id">Names it when it is to be cleared.</param>
    /// <param name="Address">The mail address.</param>
    /// <param name="Code">The status, such as 550 or 5.1.1.</param>
    /// <param name="At">When.</param>
    public sealed record AddressView(Guid Id, string Address, string Code, Instant At);

    public static void MapMessages(this IEndpointRouteBuilder app)
    {
        var messages = app.MapGroup("/api/messages").WithTags("Notices").RequireAuthorization(Access.Plan);
        messages.MapGet("", ListAsync).WithSummary("Lists messages by where they stand, the newest first.");
        messages.MapPost("/{id:guid}/resend", ResendAsync)
            .WithSummary("Sends a message that was given up once more, under the same Message-ID; safe to repeat.");
        var bounces = app.MapGroup("/api/bounces").WithTags("Notices").RequireAuthorization(Access.Plan);
        bounces.MapGet("", AddressesAsync)
            .WithSummary("Lists the mail addresses that do not exist, as their servers said.");
        bounces.MapPost("", TakeAsync).WithSummary("Takes a report of failed delivery (RFC 3464); safe to repeat.");
        bounces.MapDelete("/{id:guid}", ClearAsync).WithSummary("Says that an address works again.");
    }

    private static async Task<Results<Ok<List<MessageView>>, ValidationProblem>> ListAsync(
        string? state, MessageReader reader, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        var word = faults.Required("state", state, States.ContainsKey, $"one of: {string.Join(", ", States.Keys)}");
        return faults.Any
            ? faults.ToProblem()
            : TypedResults.Ok(await reader.ListAsync(States[word], null, cancellation));
    }

    private static async Task<Results<Ok<MessageView>, NotFound, ValidationProblem, ProblemHttpResult>> ResendAsync(
        Guid id, MessageHandler handler, CancellationToken cancellation) =>
        (await handler.ResendAsync(id, cancellation)).Answer(message => message);

    private static Task<List<AddressView>> AddressesAsync(WorkWindowsDb db, CancellationToken cancellation) =>
        db.BouncingAddresses.AsNoTracking().OrderByDescending(bounce => bounce.BouncedAt)
            .Select(bounce => new AddressView(bounce.Id, bounce.Address, bounce.Code, bounce.BouncedAt))
            .ToListAsync(cancellation);

    private static async Task<Results<NoContent, NotFound, ValidationProblem, ProblemHttpResult>> ClearAsync(
        Guid id, MessageHandler handler, CancellationToken cancellation) =>
        (await handler.ClearAsync(id, cancellation)).AnswerNothing();

    private static async Task<Results<Ok<MessageView>, NotFound, ValidationProblem, ProblemHttpResult>> TakeAsync(
        HttpRequest request, BounceHandler handler, CancellationToken cancellation)
    {
        if (await ReadAsync(request.Body, cancellation) is not { } content)
        {
            return TypedResults.Problem(
                $"The limit is {LargestReportMb} MB. Nothing was stored.",
                statusCode: StatusCodes.Status413PayloadTooLarge, title: "The report is too large.");
        }
        if (DeliveryReport.Read(content, request.ContentType) is not { } report)
        {
            return TypedResults.Problem(
                $"Send {DeliveryReport.Accepted}. Nothing was stored.",
                statusCode: StatusCodes.Status400BadRequest, title: "This is no report of failed delivery.");
        }
        return (await handler.TakeAsync(report, cancellation)).Answer(message => message);
    }

    /// <returns>The body whole, or null where it is too large.</returns>
    private static async Task<MemoryStream?> ReadAsync(Stream body, CancellationToken cancellation)
    {
        var content = new MemoryStream();
        var buffer = new byte[81_920];
        for (int read; (read = await body.ReadAsync(buffer, cancellation)) > 0;)
        {
            if (content.Length + read > LargestReportMb * BytesPerMb)
                return null;
            content.Write(buffer, 0, read);
        }
        content.Position = 0;
        return content;
    }
}
