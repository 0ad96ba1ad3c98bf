namespace WorkWindows.Service.Review;

public static class ReviewServices
{
    public static void AddReview(this IHostApplicationBuilder builder)
    {
        builder.Services.AddScoped<ReviewHandler>();
        builder.Services.AddScoped<ReviewList>();
    }
}
