using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

public static class AccountServices
{
    private const string EitherScheme = "Either";

    private static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(15);
    private static readonly TimeSpan SignedInFor = TimeSpan.FromDays(14);

    /// <summary>How long someone who was removed, or whose role changed, can go on with an old cookie.</summary>
    private static readonly TimeSpan RecheckedAfter = TimeSpan.FromMinutes(5);

    public static void AddAccounts(this IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddIdentityCore<Person>(Configure)
            .AddEntityFrameworkStores<WorkWindowsDb>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<PersonClaims>();
        services.Configure<SecurityStampValidatorOptions>(options => options.ValidationInterval = RecheckedAfter);
        services.AddAuthentication(EitherScheme)
            .AddPolicyScheme(EitherScheme, EitherScheme, options => options.ForwardDefaultSelector = context =>
                ApiKeyAuthentication.Announced(context.Request)
                    ? ApiKeyAuthentication.Scheme
                    : IdentityConstants.ApplicationScheme)
            .AddScheme<AuthenticationSchemeOptions, ApiKeyAuthentication>(ApiKeyAuthentication.Scheme, null)
            .AddCookie(IdentityConstants.ApplicationScheme, Configure);
        services.AddAuthorization(Access.AddPolicies);
        services.Configure<ProblemDetailsOptions>(options => options.CustomizeProblemDetails = Access.Explain);
        services.AddScoped(Caller.OfRequest);
        services.AddScoped<SignInAttempt>();
        services.AddScoped<OrganizationSetup>();
    }

    public static void MapAccounts(this IEndpointRouteBuilder app)
    {
        app.MapPeople();
        app.MapApiKeys();
    }

    private static void Configure(IdentityOptions options)
    {
        options.User.RequireUniqueEmail = true;
        options.Lockout.MaxFailedAccessAttempts = 5;
        options.Lockout.DefaultLockoutTimeSpan = LockedFor;
        // Length protects; compositions only make people write passwords down.
        options.Password.RequiredLength = 12;
        options.Password.RequireDigit = false;
        options.Password.RequireLowercase = false;
        options.Password.RequireUppercase = false;
        options.Password.RequireNonAlphanumeric = false;
    }

    private static void Configure(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "workwindows";
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.ExpireTimeSpan = SignedInFor;
        options.LoginPath = "/sign-in";
        options.AccessDeniedPath = "/problem";
        options.Events.OnRedirectToLogin = AnswerApi(
            options.Events.OnRedirectToLogin, StatusCodes.Status401Unauthorized);
        options.Events.OnRedirectToAccessDenied = context =>
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        };
        options.Events.OnValidatePrincipal = context =>
        {
            Caller.EnterOrganization(context.HttpContext, context.Principal!);
            return SecurityStampValidator.ValidatePrincipalAsync(context);
        };
    }

    /// <summary>A program that is sent to a sign-in page learns nothing; a status tells it.</summary>
    private static Func<RedirectContext<CookieAuthenticationOptions>, Task> AnswerApi(
        Func<RedirectContext<CookieAuthenticationOptions>, Task> redirect, int status) => context =>
    {
        if (!context.Request.Path.StartsWithSegments("/api"))
            return redirect(context);
        context.Response.StatusCode = status;
        return Task.CompletedTask;
    };
}
