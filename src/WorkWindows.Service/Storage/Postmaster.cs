using System.Globalization;

namespace WorkWindows.Service.Storage;

/// <summary>The server that a data folder's postmaster.pid speaks of.</summary>
internal static class Postmaster
{
    /// <returns>The process that serves the data folder, or null when there is none.</returns>
    /// <remarks>
    /// A file left behind by a crash may name a process that has nothing to do with it; only the command line tells.
    /// </remarks>
    public static int? RunningIn(string clusterFolder) =>
        NamedIn(clusterFolder) is { } pid && CommandLine(pid).Contains(clusterFolder) ? pid : null;

    /// <summary>Removes the file when the process it names lives but serves something else: PostgreSQL would wait
    /// for it for ever. A file that names no living process PostgreSQL clears away itself.</summary>
    public static void RemoveMisleadingFile(string clusterFolder)
    {
        if (NamedIn(clusterFolder) is { } pid && CommandLine(pid) is { Length: > 0 } other
            && !other.Contains(clusterFolder) && !AnyServerProcessIn(clusterFolder))
        {
            File.Delete(FileIn(clusterFolder));
        }
    }

    private static string FileIn(string clusterFolder) => Path.Combine(clusterFolder, "postmaster.pid");

    private static int? NamedIn(string clusterFolder)
    {
        if (!File.Exists(FileIn(clusterFolder)))
            return null;
        var firstLine = File.ReadLines(FileIn(clusterFolder)).FirstOrDefault();
        return int.TryParse(firstLine, CultureInfo.InvariantCulture, out var pid) ? pid : null;
    }

    /// <summary>
    /// Backends outlive a killed server for a moment; each has the data folder as its working folder.
    /// </summary>
    private static bool AnyServerProcessIn(string clusterFolder) =>
        OperatingSystem.IsLinux() && Directory.EnumerateDirectories("/proc")
            .Where(folder => char.IsAsciiDigit(Path.GetFileName(folder)[0]))
            .Any(folder => WorkingFolder(folder) == clusterFolder);

    private static string? WorkingFolder(string processFolder)
    {
        try
        {
            return new FileInfo(Path.Combine(processFolder, "cwd")).LinkTarget;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null; // It ended while we looked, or belongs to someone else: either way it is not the cluster's.
        }
    }

    /// <returns>The arguments, or none when the process is gone or only waits to be reaped.</returns>
    private static string[] CommandLine(int pid)
    {
        try
        {
            if (OperatingSystem.IsLinux())
                return File.ReadAllText($"/proc/{pid}/cmdline").Split('\0', StringSplitOptions.RemoveEmptyEntries);
            var listed = LocalProcess.Run("/bin/ps", ["-ww", "-o", "command=", "-p", $"{pid}"], account: null);
            return listed.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        }
        catch (Exception fault) when (fault is IOException or LocalProcessException)
        {
            return [];
        }
    }
}
