namespace WorkWindows.Tests;

/// <summary>Finds the files that tests read in place.</summary>
internal static class ProjectFiles
{
    public static string Root { get; } = FindRoot();

    public static string Reference(string path)
    {
        var folder = Environment.GetEnvironmentVariable("WORKWINDOWS_REFERENCE_DATA")
            ?? Path.Combine(Root, "..", "shared", "data");
        var file = Path.GetFullPath(Path.Combine(folder, path));
        return File.Exists(file)
            ? file
            : throw new FileNotFoundException($"Reference data is absent: {file}. Set WORKWINDOWS_REFERENCE_DATA.");
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "WorkWindows.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("No folder above has WorkWindows.sln.");
    }
}
