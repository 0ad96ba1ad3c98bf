using NodaTime;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Weather;

/// <summary>How old that is which is known of the weather at a place.</summary>
/// <param name="LastReading">The last observed day; null without any.</param>
/// <param name="ForecastIssued">When the newest forecast was made; null without one.</param>
public sealed record WeatherAge(LocalDate? LastReading, Instant? ForecastIssued)
{
    /// <summary>As in 'last reading Fri 28 Feb, yesterday; forecast issued 5 hours ago'.</summary>
    /// <param name="now">The time of looking.</param>
    /// <param name="today">The day it is there.</param>
    public string Words(Instant now, LocalDate today) => $"{ReadingWords(today)}; {Forecast(now)}";

    /// <summary>As in 'last reading Fri 28 Feb, yesterday', where no forecast is taken from the station.</summary>
    /// <param name="today">The day it is there.</param>
    public string ReadingWords(LocalDate today)
    {
        if (LastReading is not { } last)
            return "no reading yet";
        var ago = Period.DaysBetween(last, today) switch
        {
            <= 0 => "today",
            1 => "yesterday",
            var days => $"{days} days ago",
        };
        return $"last reading {DayWords.Of(last, today)}, {ago}";
    }

    private string Forecast(Instant now)
    {
        if (ForecastIssued is not { } issued)
            return "no forecast";
        var age = now - issued;
        var ago = age.TotalHours switch
        {
            < 1 => "within the hour",
            < 2 => "1 hour ago",
            < 72 => $"{(int)age.TotalHours} hours ago",
            _ => $"{age.Days} days ago",
        };
        return $"forecast issued {ago}{(age > WeatherRecords.LongestUsableAge ? ", too old to be used" : "")}";
    }
}
