using System.Globalization;
using System.Text;
using WorkWindows.Engine.Chances.Verification;

namespace WorkWindows.Service.Chances;

/// <summary>Draws how often days came true against the chance that was told, as SVG.</summary>
public static class ReliabilityPlot
{
    private const int Side = 320, Margin = 48, Ticks = 5;
    private const double LargestRadius = 9, SmallestRadius = 2.5;

    public static string Of(IReadOnlyList<ReliabilityBin> bins, string title)
    {
        var svg = new StringBuilder();
        var size = Side + 2 * Margin;
        Line($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {size} {size}\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\">");
        Line($"<title>{title}</title>");
        Line($"<rect width=\"{size}\" height=\"{size}\" fill=\"#ffffff\"/>");
        for (var tick = 0; tick <= Ticks; tick++)
        {
            var share = (double)tick / Ticks;
            Line($"<path d=\"M{X(share)} {Y(0)}V{Y(1)}M{X(0)} {Y(share)}H{X(1)}\" stroke=\"#d9dee3\"/>");
            Line($"<text x=\"{X(share)}\" y=\"{Y(0) + 18}\" text-anchor=\"middle\">{share:0%}</text>");
            Line($"<text x=\"{X(0) - 6}\" y=\"{Y(share) + 4}\" text-anchor=\"end\">{share:0%}</text>");
        }
        Line($"<path d=\"M{X(0)} {Y(0)}L{X(1)} {Y(1)}\" stroke=\"#57606a\" stroke-dasharray=\"5 4\"/>");
        var most = bins.Skip(1).SkipLast(1).Max(bin => bin.Days);
        foreach (var bin in bins.Where(bin => bin.Days > 0))
        {
            var radius = Math.Clamp(
                LargestRadius * Math.Sqrt((double)bin.Days / Math.Max(most, 1)), SmallestRadius, LargestRadius);
            Line($"<circle cx=\"{X(bin.Chance)}\" cy=\"{Y(bin.Share)}\" r=\"{radius:0.0}\" fill=\"#0b5d3b\"><title>told {bin.Chance:0%}, came {bin.Share:0%}, {bin.Days} days</title></circle>");
        }
        Line($"<text x=\"{size / 2}\" y=\"{size - 10}\" text-anchor=\"middle\">chance that was told</text>");
        Line($"<text x=\"14\" y=\"{size / 2}\" text-anchor=\"middle\" transform=\"rotate(-90 14 {size / 2})\">share of the days that were workable</text>");
        Line($"<text x=\"{size / 2}\" y=\"24\" text-anchor=\"middle\" font-weight=\"bold\">{title}</text>");
        svg.Append("</svg>\n");
        return svg.ToString();

        void Line(FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');

        static double X(double share) => Math.Round(Margin + Side * share, 1);

        static double Y(double share) => Math.Round(Margin + Side * (1 - share), 1);
    }
}
