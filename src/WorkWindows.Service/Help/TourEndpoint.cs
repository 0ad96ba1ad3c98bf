using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Help;

internal static class TourEndpoint
{
    /// <summary>Leads to a stop of the tour, on the land that there is.</summary>
    public static void MapHelp(this IEndpointRouteBuilder app) =>
        app.MapGet("/help/tour/{number:int}", GoAsync).RequireAuthorization(Access.Plan).ExcludeFromDescription();

    private static async Task<Results<RedirectHttpResult, NotFound>> GoAsync(
        int number, OutlookReader outlooks, WeekHandler week, IClock clock, CancellationToken cancellation)
    {
        if (Tour.At($"{number}") is not { } stop)
            return TypedResults.NotFound();
        var (today, now) = (await week.TodayAsync(cancellation), clock.GetCurrentInstant());
        var tasks = await outlooks.ReadAsync(cancellation);
        var places = new TourPlaces(
            today, tasks.Find(task => task.MayBeDone(today, now)) ?? tasks.FirstOrDefault(),
            tasks.Find(task => task.On(today, now) == DayState.Closed) ?? tasks.FirstOrDefault());
        return TypedResults.Redirect($"{stop.Step.Address(places)}?tour={number}");
    }
}
