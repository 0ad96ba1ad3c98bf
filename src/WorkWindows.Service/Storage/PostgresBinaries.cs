using System.Globalization;
using System.Text.RegularExpressions;

namespace WorkWindows.Service.Storage;

/// <summary>The PostgreSQL programs of this machine.</summary>
/// <param name="Folder">The folder that holds initdb, pg_ctl and postgres.</param>
/// <param name="Major">Their major version, which a data folder is bound to.</param>
public sealed partial record PostgresBinaries(string Folder, int Major)
{
    public const string Variable = "WORKWINDOWS_POSTGRES_BIN";

    /// <summary>Debian, Alpine, Fedora, and Homebrew on either processor.</summary>
    private static readonly string[] Places =
    [
        "/usr/lib/postgresql/*/bin", "/usr/libexec/postgresql*", "/usr/bin",
        "/opt/homebrew/opt/postgresql@*/bin", "/usr/local/opt/postgresql@*/bin",
    ];

    /// <param name="chosen">The value of WORKWINDOWS_POSTGRES_BIN, or null or empty where it is not set.</param>
    /// <param name="majorsInUse">Major versions that already have data here.</param>
    /// <returns>The newest binaries that can open the existing data; without data, the newest.</returns>
    public static PostgresBinaries Find(string? chosen, IReadOnlyCollection<int> majorsInUse)
    {
        var found = (string.IsNullOrEmpty(chosen) ? Places.SelectMany(Expand) : [chosen])
            .Where(folder => File.Exists(Path.Combine(folder, "initdb")))
            .Select(folder => new PostgresBinaries(folder, MajorOf(folder)))
            .OrderByDescending(binaries => binaries.Major)
            .ToList();
        if (found.Count == 0)
        {
            throw new SetupException(
                $"No PostgreSQL server programs in {chosen ?? string.Join(", ", Places)}. Install the package " +
                $"'postgresql' (Fedora: 'postgresql-server'), or set {Variable} to the folder that holds initdb, " +
                "or WORKWINDOWS_DATABASE to a connection string.");
        }

        if (majorsInUse.Count == 0)
            return found[0];
        return found.Find(binaries => majorsInUse.Contains(binaries.Major)) ?? throw new SetupException(
            $"The data here belongs to PostgreSQL {string.Join(" and ", majorsInUse)}, but this machine has " +
            $"{string.Join(" and ", found.Select(binaries => binaries.Major))}. Install the older version, or move " +
            "the data with pg_dump as docs/operations.md describes.");
    }

    public string Program(string name) => Path.Combine(Folder, name);

    private static IEnumerable<string> Expand(string pattern)
    {
        var parts = pattern.Split('*', 2);
        if (parts.Length == 1)
            return [pattern];
        var parent = Path.GetDirectoryName(parts[0])!;
        return Directory.Exists(parent)
            ? Directory.EnumerateDirectories(parent, Path.GetFileName(parts[0]) + "*").Select(path => path + parts[1])
            : [];
    }

    private static int MajorOf(string folder)
    {
        var version = LocalProcess.Run(Path.Combine(folder, "postgres"), ["--version"], account: null);
        return int.Parse(FirstNumber().Match(version).Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"\d+")]
    private static partial Regex FirstNumber();
}
