using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace WorkWindows.Service.Storage;

/// <summary>The files of the private cluster.</summary>
/// <param name="Data">The data folder of the service.</param>
/// <param name="Home">What belongs to the account of the database server.</param>
/// <param name="Cluster">The data folder of PostgreSQL, one a major version.</param>
/// <param name="Socket">Where the server answers.</param>
internal sealed record LocalClusterFolders(string Data, string Home, string Cluster, string Socket)
{
    public const string Settings = "workwindows.conf";

    private const string HomeName = "postgresql";
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>
    /// The name of the socket's file takes 17 of the 107 bytes that the address of a socket may have.
    /// </summary>
    private const int LongestSocketFolder = 90;

    /// <summary>PostgreSQL refuses to run as root; the account comes with its package.</summary>
    public static string? Account => Environment.IsPrivilegedProcess ? "postgres" : null;

    public string Lock => Path.Combine(Data, "cluster.lock");

    public string Log => Path.Combine(Home, "server.log");

    public static LocalClusterFolders Of(string dataFolder, int major)
    {
        var home = Path.Combine(dataFolder, HomeName);
        var socket = Path.Combine(home, "run");
        if (Encoding.UTF8.GetByteCount(socket) > LongestSocketFolder)
        {
            var name = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(dataFolder)))[..16];
            socket = Path.Combine(Path.GetTempPath(), $"workwindows-{name}");
        }

        return new(dataFolder, home, Path.Combine(home, $"{major}"), socket);
    }

    /// <returns>The major versions of the clusters that stand in the data folder.</returns>
    public static IReadOnlyCollection<int> MajorsIn(string dataFolder)
    {
        var home = Path.Combine(dataFolder, HomeName);
        return !Directory.Exists(home)
            ? []
            : [.. Directory.EnumerateDirectories(home)
                .Select(folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var major)
                    ? major
                    : (int?)null)
                .OfType<int>()];
    }

    public void Create()
    {
        Directory.CreateDirectory(Data);
        CreatePrivate(Home);
        CreatePrivate(Socket);
    }

    /// <returns>An empty folder beside the cluster's.</returns>
    public string CreateUnfinished()
    {
        var folder = Cluster + ".unfinished";
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        CreatePrivate(folder);
        return folder;
    }

    private static void CreatePrivate(string folder)
    {
        if (Account is { } account)
            LocalProcess.Run("/usr/bin/install", ["-d", "-m", "0700", "-o", account, folder], account: null);
        else
            Directory.CreateDirectory(folder, OwnerOnly);
        if (File.GetUnixFileMode(folder) != OwnerOnly)
            throw new SetupException($"{folder} can be entered by others; it must have mode 0700.");
    }
}
