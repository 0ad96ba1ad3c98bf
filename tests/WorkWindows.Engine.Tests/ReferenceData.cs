namespace WorkWindows.Engine.Tests;

/// <summary>The shared data folder, which is read in place and never copied.</summary>
internal static class ReferenceData
{
    private const string Variable = "WORKWINDOWS_REFERENCE_DATA";

    /// <exception cref="InvalidOperationException">The file is not there.</exception>
    public static string PathOf(string file)
    {
        var folder = Environment.GetEnvironmentVariable(Variable)
            ?? Path.Combine(ProjectRoot(), "..", "shared", "data");
        var path = Path.GetFullPath(Path.Combine(folder, file));
        return File.Exists(path)
            ? path
            : throw new InvalidOperationException($"No reference data at {path}: set {Variable} to its folder.");
    }

    private static string ProjectRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "WorkWindows.sln")))
            folder = folder.Parent;
        return folder?.FullName
            ?? throw new InvalidOperationException("WorkWindows.sln is in no folder above the tests.");
    }
}
