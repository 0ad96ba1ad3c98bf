using System.Globalization;

namespace WorkWindows.Benchmarks.Validation;

/// <summary>Works out the figures of docs/validation.md from the reference data.</summary>
internal static class Report
{
    /// <param name="docs">The folder of the document; its plots go to the folder images in it.</param>
    public static int Write(string docs)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        var sections = new[]
        {
            Introduction,
            ParseSpeed.Section(),
            Weather.Section(),
            Chances.Section(Path.Combine(docs, "images")),
            LeafOutErrors.Section(),
        };
        File.WriteAllText(Path.Combine(docs, "validation.md"), string.Join("\n", sections));
        return 0;
    }

    private const string Introduction = """
        # Validation

        How good the numbers are, measured on real records. This page is written by

        ```
        dotnet run -c Release --project tests/WorkWindows.Benchmarks -- validation
        ```

        from the reference data, in about five minutes. Station records: NOAA GHCN-Daily (Menne et al. 2012,
        doi:10.7289/V5D21VHZ), public domain. Leaf-out: USA National Phenology Network and Harvard Forest observations as
        packed with pyPhenology (MIT).

        """;
}
