using System.Collections.Immutable;
using WorkWindows.Feeds.Portfolio;

namespace WorkWindows.Feeds.Tests.Portfolio;

public class SampleTests
{
    private const double SquareMetresPerAcre = 4046.8564224;

    [Fact]
    public void Samples_AreAccepted()
    {
        var parcels = ReadParcels();
        Assert.True(parcels.IsAccepted, parcels.Faults.ToString());
        using var stream = File.OpenRead(Path.Combine(ProjectFiles.Root, "docs", "samples", "tasks.csv"));
        var tasks = TaskFile.Read(
            stream, parcels.Rows.Select(row => row.Parcel).ToImmutableHashSet(), ImmutableHashSet<string>.Empty);
        Assert.True(tasks.IsAccepted, tasks.Faults.ToString());

        Assert.Equal(4, parcels.Rows.Select(row => row.Property).Distinct().Count());
        Assert.Equal(["MI", "PA", "WI"], parcels.Rows.Select(row => row.State).Distinct().Order());
        Assert.Equal((6, 8), (parcels.Rows.Length, tasks.Rows.Length));
    }

    [Fact]
    public void Samples_HaveAreasOfWoodlots() =>
        Assert.All(ReadParcels().Rows.Where(row => row.Site.AreaM2 is not null), row =>
            Assert.InRange(row.Site.AreaM2!.Value / SquareMetresPerAcre, 20, 80));

    private static ParcelImport ReadParcels()
    {
        using var stream = File.OpenRead(Path.Combine(ProjectFiles.Root, "docs", "samples", "parcels.geojson"));
        return ParcelFile.Read(stream);
    }
}
