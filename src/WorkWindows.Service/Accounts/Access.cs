using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;

namespace WorkWindows.Service.Accounts;

/// <summary>The policies that endpoints and pages ask for. Without one, any signed-in caller is let in.</summary>
public static class Access
{
    /// <summary>Change land, work and people: consultants.</summary>
    public const string Plan = "plan";

    /// <summary>Read tasks and checklists: consultants, crew leads, crew members.</summary>
    public const string Work = "work";

    /// <summary>Answer for something by name: consultants who have signed in themselves, and no machine.</summary>
    public const string Sign = "sign";

    /// <summary>Acknowledge a checklist by name: whoever works and has signed in, and no machine.</summary>
    public const string Acknowledge = "acknowledge";

    /// <summary>Says to a machine, which may be allowed much else, why it is not let in.</summary>
    internal static void Explain(ProblemDetailsContext context)
    {
        var request = context.HttpContext;
        if (context.ProblemDetails.Status == StatusCodes.Status403Forbidden
            && Caller.Of(request.User) is { PersonId: null }
            && request.GetEndpoint()?.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(asked => asked.Policy)
                .FirstOrDefault(policy => policy is Sign or Acknowledge) is { } policy)
        {
            var who = policy == Sign ? "a consultant" : "somebody of the crew or a consultant";
            context.ProblemDetails.Detail ??=
                $"Somebody must answer for this by name: {who} who has signed in may do it, and no key of a machine.";
        }
    }

    internal static void AddPolicies(AuthorizationOptions options)
    {
        options.FallbackPolicy = options.DefaultPolicy;
        options.AddPolicy(Plan, policy => policy.RequireRole(nameof(Role.Consultant)));
        options.AddPolicy(Sign, policy => policy.RequireRole(nameof(Role.Consultant))
            .RequireClaim(ClaimTypes.NameIdentifier));
        options.AddPolicy(Acknowledge, policy => policy.RequireClaim(ClaimTypes.NameIdentifier).RequireRole(
            nameof(Role.Consultant), nameof(Role.CrewLead), nameof(Role.CrewMember)));
        options.AddPolicy(Work, policy => policy.RequireRole(
            nameof(Role.Consultant), nameof(Role.CrewLead), nameof(Role.CrewMember)));
    }
}
