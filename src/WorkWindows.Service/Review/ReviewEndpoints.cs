using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

internal static class ReviewEndpoints
{
    public static void MapReview(this IEndpointRouteBuilder app)
    {
        var day = app.MapGroup("/api/tasks/{id:guid}/days/{date}/review").WithTags("Decisions").RequireAuthorization();
        day.MapGet("", ShowAsync).WithSummary(
            "Tells what was decided about a day, what was known then, and what a replay and today's readings give.");
        day.MapGet("/pdf", PdfAsync).WithSummary("The same as PDF.").Produces(200, contentType: "application/pdf");
        day.MapGet("/csv", CsvAsync).WithSummary("The same as CSV.").Produces<string>(contentType: "text/csv");
    }

    private static async Task<Results<Ok<DayReview>, NotFound, ValidationProblem>> ShowAsync(
        Guid id, string date, Guid? decision, ReviewHandler reviews, CancellationToken cancellation) =>
        Day(date, out var faults) is not { } day ? faults.ToProblem()
        : (await reviews.ReadAsync(id, day, decision, compares: true, cancellation)).Review is { } review ? TypedResults.Ok(review)
        : TypedResults.NotFound();

    private static Task<Results<FileContentHttpResult, NotFound, ValidationProblem>> PdfAsync(
        Guid id, string date, Guid? decision, ReviewHandler reviews, CancellationToken cancellation) =>
        FileAsync(id, date, decision, reviews, ReviewPdf.Of, "application/pdf", "pdf", cancellation);

    private static Task<Results<FileContentHttpResult, NotFound, ValidationProblem>> CsvAsync(
        Guid id, string date, Guid? decision, ReviewHandler reviews, CancellationToken cancellation) =>
        FileAsync(id, date, decision, reviews, CsvOf, "text/csv; charset=utf-8", "csv", cancellation);

    private static byte[] CsvOf(DayReview review) => Encoding.UTF8.GetBytes(Csv.Of(
        ReviewLines.Of(review).Select(line => new[] { line.Section, line.What, line.Value })
            .Prepend(["section", "what", "value"])));

    private static async Task<Results<FileContentHttpResult, NotFound, ValidationProblem>> FileAsync(
        Guid id, string date, Guid? decision, ReviewHandler reviews, Func<DayReview, byte[]> write, string type,
        string ending, CancellationToken cancellation) =>
        Day(date, out var faults) is not { } day ? faults.ToProblem()
        : (await reviews.ReadAsync(id, day, decision, compares: true, cancellation)).Review is { } review
            ? TypedResults.File(write(review), type, $"review-{day:R}.{ending}")
        : TypedResults.NotFound();

    private static LocalDate? Day(string date, out FieldFaults faults) =>
        AskedDays.Date("date", date, faults = new());
}
