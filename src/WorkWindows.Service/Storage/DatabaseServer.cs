namespace WorkWindows.Service.Storage;

/// <summary>The database of this service: the one WORKWINDOWS_DATABASE names, else a private cluster.</summary>
public sealed class DatabaseServer : IDisposable
{
    public const string Variable = "WORKWINDOWS_DATABASE";

    private readonly LocalCluster? _cluster;

    public DatabaseServer(IConfiguration configuration, ILogger<DatabaseServer> logger)
    {
        var given = configuration[Variable];
        if (string.IsNullOrEmpty(given))
        {
            var folder = DataFolder.Of(configuration[DataFolder.Variable]);
            _cluster = new LocalCluster(folder, configuration[PostgresBinaries.Variable], settings: "", logger);
        }

        try
        {
            Address = DatabaseAddress.Of(_cluster?.ConnectionString ?? given!);
        }
        catch (ArgumentException fault)
        {
            throw new SetupException($"{Variable} is not a connection string that can be used: {fault.Message}");
        }
    }

    public DatabaseAddress Address { get; }

    public Task StartAsync(CancellationToken cancellation) =>
        _cluster?.StartAsync(cancellation) ?? Task.CompletedTask;

    public Task ReviveAsync(CancellationToken cancellation) =>
        _cluster?.ReviveAsync(cancellation) ?? Task.CompletedTask;

    public void Stop() => _cluster?.Stop();

    public void Dispose() => Stop();
}
