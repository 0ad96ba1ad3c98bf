namespace WorkWindows.Service.Records;

public static class RecordServices
{
    /// <summary>The page of a parcel's weather.</summary>
    public static void AddRecords(this IHostApplicationBuilder builder) => builder.Services.AddScoped<RecordReader>();
}
