using System.Text.Json;
using WorkWindows.Service.Tests.Hosting;

namespace WorkWindows.Service.Tests.Properties;

/// <summary>Land that tests create through the API.</summary>
internal static class Land
{
    public static readonly string[] Quiet = ["quiet-on-deer-openers"];

    /// <summary>A small square of the given corner; RFC 7946 order, longitude first.</summary>
    public static object Square(double longitude, double latitude) => new
    {
        type = "Polygon",
        coordinates = new[]
        {
            new[]
            {
                new[] { longitude, latitude }, [longitude + 0.005, latitude], [longitude + 0.005, latitude + 0.004],
                [longitude, latitude + 0.004], [longitude, latitude],
            },
        },
    };

    /// <summary>One species is an inventory already.</summary>
    public static object[] Stand(string species) => [new { species, dbhMinIn = 6, dbhMaxIn = 14, stemsPerAcre = 80 }];

    /// <returns>The ids of a new property and its parcel.</returns>
    public static async Task<(Guid Property, Guid Parcel)> CreateAsync(
        HttpClient client, double longitude, double latitude, string county, string state, string species = "red maple")
    {
        var key = Guid.NewGuid().ToString("N");
        var property = await client.CreateAsync("/api/properties", new
        {
            key,
            name = $"Woods {key}",
            countyFips = county,
            state,
            parcel = new { key, name = "Slope", geometry = Square(longitude, latitude), stand = Stand(species) },
        });
        var parcels = await client.ReadAsync($"/api/properties/{property.Id()}/parcels");
        return (property.Id(), parcels[0].Id());
    }

    public static Task<JsonElement> TaskAsync(HttpClient client, Guid parcelId, string practice) =>
        client.CreateAsync("/api/tasks", new { key = Guid.NewGuid().ToString("N"), parcelId, practice, crewSize = 2 });
}
