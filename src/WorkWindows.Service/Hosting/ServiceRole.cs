using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Hosting;

/// <summary>What this instance does: serve pages and API, run the jobs, or both.</summary>
public enum ServiceRole
{
    All,
    Web,
    Worker,
}

public static class ServiceRoles
{
    public const string Variable = "WORKWINDOWS_ROLE";

    public static ServiceRole Of(IConfiguration configuration) => configuration[Variable] switch
    {
        null or "" or "all" => ServiceRole.All,
        "web" => ServiceRole.Web,
        "worker" => ServiceRole.Worker,
        var other => throw new SetupException($"{Variable} is '{other}'; it may be all, web or worker."),
    };
}
