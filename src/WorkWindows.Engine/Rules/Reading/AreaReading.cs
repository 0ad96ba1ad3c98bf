using System.Globalization;
using WorkWindows.Engine.Land;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads the corners of an area.</summary>
internal static class AreaReading
{
    public const int FewestCorners = 3;
    public const double MostNorth = 90;
    public const double MostEast = 180;

    private const string CornerForm = "a corner such as [44.25, -86.30]: degrees north, then degrees east";

    public static Area? Read(Entry entry)
    {
        var corners = entry.Items().Select(Corner).ToArray();
        if (corners.Length is > 0 and < FewestCorners)
            entry.Refuse($"at least {FewestCorners} corners");
        return corners.Length < FewestCorners || corners.Contains(null) ? null : new([.. corners.OfType<Place>()]);
    }

    private static Place? Corner(Entry entry)
    {
        if (entry.Items().ToArray() is [var north, var east])
        {
            return Degrees(north, MostNorth) is { } latitude && Degrees(east, MostEast) is { } longitude
                ? new(latitude, longitude)
                : null;
        }
        entry.Refuse(CornerForm);
        return null;
    }

    private static double? Degrees(Entry entry, double limit)
    {
        if (double.TryParse(entry.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= limit)
        {
            return value;
        }
        entry.Refuse($"degrees from {-limit} to {limit}");
        return null;
    }
}
