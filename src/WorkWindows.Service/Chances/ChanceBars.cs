using System.Globalization;
using System.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Chances;

/// <summary>The chances of days as bars under the row of their states.</summary>
/// <param name="Days">The days drawn.</param>
/// <param name="Title">What the row shows.</param>
/// <param name="Label">The drawing in words.</param>
/// <param name="Path">The bars as a path, a unit wide each and as high as <see cref="Height"/> where certain.</param>
/// <param name="NotTold">The days without a chance, drawn as what is in doubt.</param>
/// <param name="Titles">What each day says when it is pointed at.</param>
public sealed record ChanceBars(
    DaySpan Days, string Title, string Label, string Path, IReadOnlyList<BandRun> NotTold, IReadOnlyList<string> Titles)
{
    public const int Height = 36;

    private const double Half = 0.5;

    /// <returns>Null when no chance is told.</returns>
    public static ChanceBars? Of(SeasonChances chances)
    {
        if (!chances.AreTold)
            return null;
        var today = chances.Days.First;
        var each = chances.Each;
        var path = new StringBuilder();
        for (var day = 0; day < each.Count; day++)
        {
            if (each[day].Share is > 0 and var share)
                path.Append(CultureInfo.InvariantCulture, $"M{day} {Height}v{-share * Height:0.#}h1V{Height}z");
        }
        return new(
            chances.Days, $"Chance that the day may be worked, by {ChanceWords.Years(chances)}", LabelOf(chances),
            path.ToString(), NotToldIn(chances),
            [.. each.Select((chance, day) => ChanceWords.Of(chances.Days[day], chance, today))]);
    }

    private static string LabelOf(SeasonChances chances)
    {
        var (each, today) = (chances.Each, chances.Days.First);
        var likely = Enumerable.Range(0, each.Count).Where(day => each[day].Share >= Half).ToList();
        var untold = each.Count(chance => chance.Share is null);
        var first = likely.Count == 0 ? "" : $", the first {DayWords.Of(chances.Days[likely[0]], today)}";
        return $"Chance of each day: half or more on {likely.Count} of {each.Count} days{first}"
            + (untold == 0 ? "" : $"; not known on {untold}");
    }

    private static List<BandRun> NotToldIn(SeasonChances chances)
    {
        var runs = new List<BandRun>();
        for (var day = 0; day < chances.Each.Count; day++)
        {
            var first = day;
            while (day < chances.Each.Count && chances.Each[day].Share is null)
                day++;
            if (day > first)
                runs.Add(new("in-doubt", chances.Days[first], chances.Days[day - 1]));
        }
        return runs;
    }
}
