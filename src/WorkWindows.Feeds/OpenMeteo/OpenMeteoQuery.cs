using System.Globalization;
using NodaTime;
using WorkWindows.Feeds.Daily;

namespace WorkWindows.Feeds.OpenMeteo;

internal static class OpenMeteoQuery
{
    /// <param name="address">Of the service, up to its version.</param>
    /// <param name="request">Where and in which zone.</param>
    /// <param name="days">Which days, as parameters.</param>
    /// <param name="key">The key of a paid plan; empty without one.</param>
    public static Uri Address(Uri address, DailyFeedRequest request, string days, string key)
    {
        var place = request.Place;
        var position = string.Create(
            CultureInfo.InvariantCulture, $"latitude={place.LatitudeDeg:0.####}&longitude={place.LongitudeDeg:0.####}");
        var elevation = place.ElevationM is { } metres
            ? string.Create(CultureInfo.InvariantCulture, $"&elevation={metres:0.#}")
            : "";
        var variables = string.Join(',', OpenMeteoDays.Variables.Select(variable => variable.Name));
        var paid = key.Length > 0 ? $"&apikey={Uri.EscapeDataString(key)}" : "";
        return new(
            address,
            $"?{position}{elevation}&daily={variables}&timezone={Uri.EscapeDataString(request.Zone.Id)}"
            + $"&{OpenMeteoDays.Units}&{days}{paid}");
    }

    public static DateInterval Always { get; } = new(LocalDate.MinIsoValue, LocalDate.MaxIsoValue);
}
