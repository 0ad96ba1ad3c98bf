namespace WorkWindows.Service.Storage;

/// <summary>Where this machine keeps what is not in the database, and the private cluster if there is one.</summary>
public static class DataFolder
{
    public const string Variable = "WORKWINDOWS_DATA";

    /// <param name="chosen">The value of WORKWINDOWS_DATA, or null or empty where it is not set.</param>
    public static string Of(string? chosen)
    {
        if (!string.IsNullOrEmpty(chosen))
            return Path.GetFullPath(chosen);
        // A home folder of root cannot be entered by the account that the database server then runs as.
        if (Environment.IsPrivilegedProcess)
            return "/var/lib/workwindows";
        var state = Environment.GetEnvironmentVariable("XDG_DATA_HOME");
        return !string.IsNullOrEmpty(state)
            ? Path.Combine(state, "workwindows")
            : Path.Combine(
                Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local/share/workwindows");
    }
}
