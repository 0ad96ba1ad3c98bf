using PdfSharp.Fonts;

namespace WorkWindows.Service.Review;

/// <summary>The fonts of reports, which come with the service: a server need not have any.</summary>
internal sealed class ReviewFonts : IFontResolver
{
    public const string Family = "DejaVu Sans";

    private const string Regular = "DejaVuSans", Bold = "DejaVuSans-Bold";

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        familyName == Family ? new(isBold ? Bold : Regular) : null;

    public byte[]? GetFont(string faceName)
    {
        using var font = typeof(ReviewFonts).Assembly.GetManifestResourceStream($"fonts/{faceName}.ttf")
            ?? throw new InvalidOperationException($"The font {faceName} does not come with the service.");
        using var bytes = new MemoryStream();
        font.CopyTo(bytes);
        return bytes.ToArray();
    }
}
