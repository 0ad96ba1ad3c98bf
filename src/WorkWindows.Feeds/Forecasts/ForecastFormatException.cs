namespace WorkWindows.Feeds.Forecasts;

/// <summary>A reply of the weather service of which nothing can be used.</summary>
public sealed class ForecastFormatException : Exception
{
    public ForecastFormatException()
    {
    }

    public ForecastFormatException(string message)
        : base(message)
    {
    }

    public ForecastFormatException(string message, Exception? innerException)
        : base(message, innerException)
    {
    }
}
