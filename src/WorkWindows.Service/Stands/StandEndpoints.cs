using Microsoft.AspNetCore.Http.HttpResults;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Stands;

public static class StandEndpoints
{
    private const double MostAcres = 1_000;

    public static void AddStands(this IHostApplicationBuilder builder) => builder.Services.AddScoped<StandReader>();

    public static void MapStands(this IEndpointRouteBuilder app) =>
        app.MapGet("/api/parcels/{id:guid}/stand", ReadAsync).WithTags("Parcels")
            .WithSummary("The stand of a parcel now and after a removal, and what takes a hinge there.");

    /// <param name="id">The parcel.</param>
    /// <param name="felled">Percent felled of each row of the inventory, in its order.</param>
    /// <param name="pocketAcres">The pocket of hinged trees that is meant, acres; null where it is not known.</param>
    /// <param name="reader">Reads the stand.</param>
    /// <param name="cancellation">Ends the queries.</param>
    private static async Task<Results<Ok<StandView>, NotFound, ValidationProblem>> ReadAsync(
        Guid id, double[]? felled, double? pocketAcres, StandReader reader, CancellationToken cancellation)
    {
        if (await reader.ReadAsync(id, cancellation) is not { } input)
            return TypedResults.NotFound();
        var faults = Check(felled ?? [], pocketAcres, input.Rows.Count);
        return faults.Any ? faults.ToProblem() : TypedResults.Ok(StandView.Of(input, felled ?? [], pocketAcres));
    }

    internal static FieldFaults Check(IReadOnlyList<double> felled, double? pocketAcres, int rows)
    {
        var faults = new FieldFaults();
        if (felled.Count > rows)
            faults.Add("felled", felled.Count, $"at most one number for each of the {rows} rows of the inventory");
        foreach (var percent in felled.Where(percent => percent is not (>= 0 and <= 100)))
            faults.Add("felled", percent, "percent from 0 to 100, one for each row of the inventory in its order");
        if (pocketAcres is not (null or (> 0 and <= MostAcres)))
            faults.Add("pocketAcres", pocketAcres, $"acres above 0 and up to {MostAcres}, or nothing");
        return faults;
    }
}
