using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace WorkWindows.Service.Review;

/// <summary>A review as a PDF on letter paper.</summary>
internal sealed class ReviewPdf : IDisposable
{
    private const double Margin = 54, Indent = 130, Leading = 13, HeadingSize = 12, TextSize = 9, TitleSize = 16;
    private static readonly XFont Title, Heading, Text, Bold;
    private readonly PdfDocument _document = new();
    private XGraphics _page;
    private double _y;

    static ReviewPdf()
    {
        GlobalFontSettings.FontResolver = new ReviewFonts();
        Title = new(ReviewFonts.Family, TitleSize, XFontStyleEx.Bold);
        Heading = new(ReviewFonts.Family, HeadingSize, XFontStyleEx.Bold);
        Text = new(ReviewFonts.Family, TextSize);
        Bold = new(ReviewFonts.Family, TextSize, XFontStyleEx.Bold);
    }

    private ReviewPdf(string title)
    {
        _document.Info.Title = title;
        _page = NextPage();
    }

    public static byte[] Of(DayReview review)
    {
        var title = $"{review.Headline}: {review.Task}";
        using var pdf = new ReviewPdf(title);
        pdf.Write(title, Title, Margin, Leading * 2);
        foreach (var section in ReviewLines.Of(review).GroupBy(line => line.Section))
        {
            // A heading does not stand alone at the foot of a page.
            pdf.Keep(Leading * 4);
            pdf._y += Leading;
            pdf.Write(section.Key, Heading, Margin, Leading * 1.4);
            foreach (var line in section)
                pdf.Write(line);
        }
        pdf._page.Dispose();
        using var stream = new MemoryStream();
        pdf._document.Save(stream);
        return stream.ToArray();
    }

    public void Dispose()
    {
        _page.Dispose();
        _document.Dispose();
    }

    private void Write(ReviewLine line)
    {
        var what = Wrapped(line.What, Bold, Indent - Leading).ToArray();
        var value = Wrapped(line.Value, Text, Width - Indent).ToArray();
        for (var row = 0; row < Math.Max(what.Length, value.Length); row++)
        {
            Keep(Leading);
            _page.DrawString(what.ElementAtOrDefault(row) ?? "", Bold, XBrushes.Black, Margin, _y);
            _page.DrawString(value.ElementAtOrDefault(row) ?? "", Text, XBrushes.Black, Margin + Indent, _y);
            _y += Leading;
        }
    }

    private void Write(string text, XFont font, double x, double leading)
    {
        foreach (var row in Wrapped(text, font, Width))
        {
            Keep(leading);
            _page.DrawString(row, font, XBrushes.Black, x, _y);
            _y += leading;
        }
    }

    private double Width => _page.PageSize.Width - 2 * Margin;

    /// <summary>Begins a page where there is no room for so much more.</summary>
    private void Keep(double height)
    {
        if (_y + height <= _page.PageSize.Height - Margin)
            return;
        _page.Dispose();
        _page = NextPage();
    }

    private XGraphics NextPage()
    {
        var page = _document.AddPage();
        page.Size = PageSize.Letter;
        _y = Margin + Leading;
        return XGraphics.FromPdfPage(page);
    }

    private IEnumerable<string> Wrapped(string text, XFont font, double width)
    {
        var row = "";
        foreach (var word in text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            if (row.Length > 0 && !Fits($"{row} {rest}"))
            {
                yield return row;
                row = "";
            }
            // An address may be wider than the page.
            while (!Fits(rest) && rest.Length > 1)
            {
                var length = Enumerable.Range(1, rest.Length).Last(count => count == 1 || Fits(rest[..count]));
                yield return rest[..length];
                rest = rest[length..];
            }
            row = row.Length == 0 ? rest : $"{row} {rest}";
        }
        yield return row;

        bool Fits(string part) => _page.MeasureString(part, font).Width <= width;
    }
}
