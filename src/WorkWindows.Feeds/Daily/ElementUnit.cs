using WorkWindows.Engine.Weather;

namespace WorkWindows.Feeds.Daily;

/// <summary>A unit in which a source gives an element: a reading is (value - zero) / scale.</summary>
/// <param name="Name">As people write it.</param>
/// <param name="Scale">How many of it make one unit of the element.</param>
/// <param name="Zero">What the source writes for 0 in the unit of the element.</param>
internal readonly record struct ElementUnit(string Name, double Scale, double Zero = 0)
{
    public static readonly ElementUnit Celsius = new("°C", 1);
    public static readonly ElementUnit TenthsCelsius = new("tenths of °C", 10);
    public static readonly ElementUnit Fahrenheit = new("°F", 1.8, 32);
    public static readonly ElementUnit Mps = new("m/s", 1);
    public static readonly ElementUnit TenthsMps = new("tenths of m/s", 10);
    public static readonly ElementUnit KmPerHour = new("km/h", 3.6);
    public static readonly ElementUnit Mph = new("mph", 1 / 0.44704);
    public static readonly ElementUnit Knots = new("kn", 3600 / 1852.0);
    public static readonly ElementUnit Mm = new("mm", 1);
    public static readonly ElementUnit TenthsMm = new("tenths of mm", 10);
    public static readonly ElementUnit Inches = new("inches", 1 / 25.4);
    public static readonly ElementUnit DepthCm = new("cm", 1);
    public static readonly ElementUnit DepthMm = new("mm", 10);
    public static readonly ElementUnit DepthInches = new("inches", 1 / 2.54);
    public static readonly ElementUnit Percent = new("percent", 1);

    /// <returns>The value in the unit of the element, without what the arithmetic adds in the last places.</returns>
    public double ToReading(double value) => Math.Round((value - Zero) / Scale, 9);

    /// <returns>What may stand in the source.</returns>
    public string Accepted(DailyElement element)
    {
        var (lowest, highest) = ReadingBounds.Of(element);
        return $"{Name} from {lowest * Scale + Zero:0.#} to {highest * Scale + Zero:0.#}";
    }
}
