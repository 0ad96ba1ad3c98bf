using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.AspNetCore.Localization;
using Microsoft.Extensions.Options;
using Serilog;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Maps;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Hosting;

public static class HostingPipeline
{
    /// <summary>
    /// Everything but map tiles comes from the service itself, in files: nothing written into a page runs or styles it.
    /// </summary>
    private const string OwnContent =
        "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public static void UseHosting(this WebApplication app)
    {
        var tiles = app.Services.GetRequiredService<IOptions<MapOptions>>().Value.TileOrigin;
        var policy = tiles is null ? OwnContent : $"{OwnContent}; img-src 'self' {tiles}";
        app.UseSerilogRequestLogging();
        app.Use((context, next) =>
        {
            context.Response.Headers.XContentTypeOptions = "nosniff";
            context.Response.Headers.ContentSecurityPolicy = policy;
            return next(context);
        });
        app.UseWhen(IsApi, api => api.UseExceptionHandler().UseStatusCodePages());
        app.UseWhen(context => !IsApi(context), pages => pages
            .UseExceptionHandler("/problem")
            .UseStatusCodePagesWithReExecute("/problem", "?status={0}"));
        app.Use((context, next) =>
        {
            if (context.Request.QueryString.Value?.Contains("%00", StringComparison.Ordinal) != true)
                return next(context);
            // The database holds no text with U+0000 in it, so nothing can be meant by it.
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            return Task.CompletedTask;
        });
        app.UseRequestLocalization(options =>
        {
            // Day first is unambiguous with the month in letters, and so stands where nobody asks for another form.
            options.SetDefaultCulture("").AddSupportedCultures([.. DayWords.Regions]);
            options.RequestCultureProviders = [new AcceptLanguageHeaderRequestCultureProvider { Options = options }];
        });
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
    }

    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready").AllowAnonymous();
    }

    public static void MapHosting(this WebApplication app)
    {
        app.MapOpenApi().AllowAnonymous();
        app.MapStaticAssets().AllowAnonymous();
        app.MapGet("/", (HttpContext context) => TypedResults.Redirect(Caller.Of(context.User)?.Role switch
        {
            Role.Consultant => "/morning",
            Role.Landowner => "/land",
            _ => "/week",
        })).ExcludeFromDescription();
        app.MapRazorPages().WithStaticAssets();
    }

    private static bool IsApi(HttpContext context) => context.Request.Path.StartsWithSegments("/api");
}
