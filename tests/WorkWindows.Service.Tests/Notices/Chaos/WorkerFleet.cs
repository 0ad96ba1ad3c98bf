using System.Diagnostics;
using System.Text.RegularExpressions;
using NodaTime;
using WorkWindows.OutboxWorker;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Notices.Chaos;

/// <summary>
/// Workers as processes of the operating system, each with a port of its own; one that is killed is started anew.
/// </summary>
internal sealed partial class WorkerFleet(
    ChaosDatabase database, Ledger ledger, Instant origin, int speed, int patienceSeconds) : IChaos, IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("ww-workers-").FullName;
    private readonly Lock _lock = new();
    private readonly Dictionary<int, Process> _workers = [];
    private readonly List<Task> _restarts = [];
    private bool _isOver;

    public IReadOnlyList<int> Ports { get; } = [.. Enumerable.Range(0, 3).Select(_ => MailServer.FreePort())];

    public void Start()
    {
        foreach (var port in Ports)
            Start(port);
    }

    public int WorkerOf(int port)
    {
        lock (_lock)
            return _workers[port].Id;
    }

    public void Kill(int port)
    {
        lock (_lock)
        {
            var worker = _workers[port];
            if (_isOver || worker.HasExited)
                return;
            worker.Kill();
            worker.WaitForExit();
            ledger.Kill(worker.Id);
            Start(port);
        }
    }

    public void KillAnother(int port) => Kill(Ports[(Ports.ToList().IndexOf(port) + 1) % Ports.Count]);

    public Task StopDatabaseAsync()
    {
        var stopped = Task.Run(() =>
        {
            ledger.DatabaseStops();
            database.Stop();
        });
        lock (_lock)
        {
            _restarts.Add(stopped.ContinueWith(
                _ => database.StartAgainAsync(), TaskScheduler.Default).Unwrap());
        }
        return stopped;
    }

    public async ValueTask DisposeAsync()
    {
        lock (_lock)
        {
            _isOver = true;
            foreach (var worker in _workers.Values)
            {
                worker.Kill();
                worker.WaitForExit();
                worker.Dispose();
            }
        }
        await Task.WhenAll(_restarts);
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>The outbox's own words for a message that goes out again though the server may have it.</summary>
    [GeneratedRegex(@"Message (?<id>[0-9a-f-]{36}) \(\S+\) (?<what>may have arrived|sent but not marked|sent after its lease)")]
    private static partial Regex Uncertain();

    private void Hear(int worker, string? line)
    {
        if (line is not null && Uncertain().Match(line) is { Success: true } said)
            ledger.Unmarked(worker, Guid.Parse(said.Groups["id"].Value), said.Groups["what"].Value);
    }

    private void Start(int port)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Worker).Assembly.Location])
        {
            RedirectStandardError = true,
        };
        foreach (var (name, value) in new[]
        {
            (DatabaseServer.Variable, database.ConnectionString),
            (DataFolder.Variable, _folder),
            (ServiceRoles.Variable, "web"),
            (Worker.Origin, $"{origin.ToUnixTimeMilliseconds()}"),
            (Worker.Speed, $"{speed}"),
            // A process that lives for seconds does not earn back what profiling its code costs.
            ("DOTNET_TieredPGO", "0"),
            ("Mail__Host", "127.0.0.1"),
            ("Mail__Port", $"{port}"),
            ("Mail__UseTls", "false"),
            ("Mail__From", "notices@example.org"),
            ("Mail__TimeoutSeconds", $"{patienceSeconds}"),
        })
        {
            start.Environment[name] = value;
        }
        var worker = Process.Start(start)!;
        var id = worker.Id;
        worker.ErrorDataReceived += (_, line) => Hear(id, line.Data);
        worker.BeginErrorReadLine();
        _workers[port] = worker;
    }
}
