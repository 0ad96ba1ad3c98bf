using System.IO.Compression;
using System.Text;
using System.Text.Json;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Weather;
using WorkWindows.Tests;

namespace WorkWindows.Service.Tests.Weather;

/// <summary>Real station records, put into an organization through the API.</summary>
internal static class GivenStation
{
    /// <summary>State College PA, 2000–2009; no wind.</summary>
    public const string StateCollege = "USC00368449";

    /// <summary>Minneapolis–St Paul airport MN, 1938–2015, with wind from 1996 on.</summary>
    public const string Minneapolis = "USW00014922";

    public static string StateCollegeFile => File.ReadAllText(ProjectFiles.Reference("stations/dly/USC00368449.dly"));

    /// <summary>The years of its file that are wanted; all of them take their time.</summary>
    public static byte[] MinneapolisFile(Func<int, bool> isWanted)
    {
        using var unpacked = new StreamReader(new GZipStream(
            File.OpenRead(ProjectFiles.Reference("stations/dly/USW00014922.full.dly.gz")), CompressionMode.Decompress));
        var lines = unpacked.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Where(line => isWanted(int.Parse(line.AsSpan(11, 4))));
        return Encoding.ASCII.GetBytes(string.Join('\n', lines) + '\n');
    }

    public static Task<JsonElement> PutAsync(
        HttpClient client, string ghcnId, double latitude, double longitude, double? elevationM = null) =>
        client.PostOkAsync($"/api/weather/stations/{ghcnId}", new { name = ghcnId, latitude, longitude, elevationM });

    public static async Task StateCollegeAsync(HttpClient client)
    {
        await PutAsync(client, StateCollege, 40.7933, -77.8672, 356.6);
        await ReadingsAsync(client, StateCollege, Encoding.ASCII.GetBytes(StateCollegeFile));
    }

    public static async Task MinneapolisAsync(HttpClient client, Func<int, bool> isWanted)
    {
        await PutAsync(client, Minneapolis, 44.8831, -93.2289, 265.8);
        await ReadingsAsync(client, Minneapolis, MinneapolisFile(isWanted));
    }

    public static Task<JsonElement> ReadingsAsync(HttpClient client, string ghcnId, byte[] file) =>
        client.ImportAsync($"/api/weather/stations/{ghcnId}/readings", file);

    /// <summary>Stores a station and a parcel that takes its temperatures or its winds from it.</summary>
    public static async Task<Guid> StoreAsync(
        TestDatabase database, Guid organization, string ghcnId, double latitude, double longitude,
        StationPurpose purpose = StationPurpose.Temperature)
    {
        await using var db = database.Open(organization);
        var property = new Property
        {
            Key = ghcnId,
            Name = ghcnId,
            CountyFips = "36001",
            State = "NY",
            TimeZone = "America/New_York",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = ghcnId,
            Name = ghcnId,
            Latitude = latitude,
            Longitude = longitude,
        };
        var station = new Station
        {
            GhcnId = ghcnId,
            Name = ghcnId,
            Latitude = latitude,
            Longitude = longitude,
            WholeFahrenheit = true,
        };
        db.AddRange(property, parcel, station, new ParcelStation
        {
            ParcelId = parcel.Id,
            Purpose = purpose,
            StationId = station.Id,
            DistanceM = 0,
        });
        await db.SaveChangesAsync();
        return station.Id;
    }
}
