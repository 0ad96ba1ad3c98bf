using System.Diagnostics;
using Npgsql;

namespace WorkWindows.Service.Storage;

/// <summary>
/// A private PostgreSQL server that answers on a socket in a folder only its account may enter. One service at a time
/// owns it; a server left running by a killed service is taken over.
/// </summary>
public sealed partial class LocalCluster : IDisposable
{
    private static readonly TimeSpan StartPatience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan OrphanPatience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan PollInterval = TimeSpan.FromMilliseconds(100);

    private readonly LocalClusterFolders _folders;
    private readonly PostgresBinaries _binaries;
    private readonly string _settings;
    private readonly ILogger _logger;
    private FileStream? _ownership;

    /// <param name="dataFolder">The data folder of the service.</param>
    /// <param name="binFolder">The folder of the PostgreSQL programs, or null to look for them.</param>
    /// <param name="settings">Further lines of the server's configuration.</param>
    /// <param name="logger">Told of each slow step.</param>
    public LocalCluster(string dataFolder, string? binFolder, string settings, ILogger logger)
    {
        _binaries = PostgresBinaries.Find(binFolder, LocalClusterFolders.MajorsIn(dataFolder));
        _folders = LocalClusterFolders.Of(dataFolder, _binaries.Major);
        _settings = settings;
        _logger = logger;
    }

    /// <summary>Connects the owner of the cluster to the database of the service.</summary>
    public string ConnectionString => new NpgsqlConnectionStringBuilder
    {
        Host = _folders.Socket,
        Username = "postgres",
        Database = "workwindows",
    }.ConnectionString;

    public async Task StartAsync(CancellationToken cancellation)
    {
        _folders.Create();
        _ownership = await OwnAsync(cancellation);
        if (!Directory.Exists(_folders.Cluster))
            Initialize();
        if (Postmaster.RunningIn(_folders.Cluster) is { } pid)
            LogAdopted(pid);
        else
            await LaunchAsync(cancellation);
        await AnswersAsync(cancellation);
    }

    /// <summary>Starts the server again if it died under this service.</summary>
    public async Task ReviveAsync(CancellationToken cancellation)
    {
        if (_ownership is null || Postmaster.RunningIn(_folders.Cluster) is not null)
            return;
        await LaunchAsync(cancellation);
        await AnswersAsync(cancellation);
    }

    /// <summary>Stops the server, if this service owns it.</summary>
    public void Stop()
    {
        if (_ownership is null)
            return;
        if (Postmaster.RunningIn(_folders.Cluster) is not null)
            Run("pg_ctl", "stop", "-D", _folders.Cluster, "-m", "fast", "-w");
        Dispose();
    }

    public void Dispose()
    {
        _ownership?.Dispose();
        _ownership = null;
    }

    /// <summary>
    /// The lock ends with the process, however it ends; one that was just killed may hold it for a moment.
    /// </summary>
    private async Task<FileStream> OwnAsync(CancellationToken cancellation)
    {
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(PollInterval, cancellation))
        {
            try
            {
                return new FileStream(_folders.Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (waited.Elapsed > OrphanPatience)
            {
                throw new SetupException(
                    $"Another service uses the data folder {_folders.Data}. Stop it, or set {DataFolder.Variable} to " +
                    "another folder, or WORKWINDOWS_DATABASE to a server that several services may share.");
            }
            catch (IOException)
            {
                // Held by another process: asked again until the patience is used up.
            }
        }
    }

    private void Initialize()
    {
        LogInitializing(_folders.Cluster, _binaries.Major);
        // Renamed when complete, so that an interruption leaves nothing that looks like a cluster.
        var unfinished = _folders.CreateUnfinished();
        Run("initdb", "-D", unfinished, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8",
            "--no-instructions");
        File.AppendAllText(
            Path.Combine(unfinished, "postgresql.conf"), $"include '{LocalClusterFolders.Settings}'\n");
        Directory.Move(unfinished, _folders.Cluster);
    }

    private async Task LaunchAsync(CancellationToken cancellation)
    {
        LogStarting(_folders.Socket);
        File.WriteAllText(
            Path.Combine(_folders.Cluster, LocalClusterFolders.Settings),
            $"listen_addresses = ''\nunix_socket_directories = '{_folders.Socket}'\nunix_socket_permissions = 0700\n" +
            _settings);
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(PollInterval, cancellation))
        {
            Postmaster.RemoveMisleadingFile(_folders.Cluster);
            try
            {
                Run("pg_ctl", "start", "-D", _folders.Cluster, "-l", _folders.Log, "-w", "-t",
                    $"{StartPatience.TotalSeconds}");
                return;
            }
            catch (LocalProcessException) when (waited.Elapsed < OrphanPatience)
            {
                // Processes of a killed server may still hold its memory for 2 to 3 seconds.
            }
        }
    }

    /// <summary>A server that was killed replays its log first and refuses connections meanwhile.</summary>
    private async Task AnswersAsync(CancellationToken cancellation)
    {
        var address = new NpgsqlConnectionStringBuilder(ConnectionString) { Database = "postgres", Pooling = false };
        for (var waited = Stopwatch.StartNew(); ; await Task.Delay(PollInterval, cancellation))
        {
            try
            {
                await using var connection = new NpgsqlConnection(address.ConnectionString);
                await connection.OpenAsync(cancellation);
                return;
            }
            catch (NpgsqlException) when (waited.Elapsed < StartPatience)
            {
                // Starting up or recovering.
            }
        }
    }

    private void Run(string program, params string[] arguments) =>
        LocalProcess.Run(_binaries.Program(program), arguments, LocalClusterFolders.Account);

    [LoggerMessage(LogLevel.Information, "Creating a private PostgreSQL {Major} cluster in {Folder}")]
    private partial void LogInitializing(string folder, int major);

    [LoggerMessage(LogLevel.Information, "Starting PostgreSQL on the socket in {Folder}")]
    private partial void LogStarting(string folder);

    [LoggerMessage(
        LogLevel.Information, "Taking over the PostgreSQL server that is still running, process {ProcessId}")]
    private partial void LogAdopted(int processId);
}
