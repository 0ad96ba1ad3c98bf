using System.Diagnostics;
using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Shouldly;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Storage;

public sealed class LocalClusterTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"wwc-{Guid.NewGuid():N}"[..12]);
    private readonly List<LocalCluster> _clusters = [];

    [Fact]
    public async Task Start_KeepsTheData_WhenItIsTheSecond()
    {
        var first = await StartAsync();
        await ExecuteAsync(first, "create table kept as select 42 as answer");
        first.Stop();

        (await ExecuteAsync(await StartAsync(), "select answer from kept")).ShouldBe(42);
    }

    [Fact]
    public async Task Start_Recovers_WhenTheServerWasKilled()
    {
        var first = await StartAsync();
        await ExecuteAsync(first, "create table kept as select 42 as answer");
        await KillServerAsync();
        first.Dispose();

        (await ExecuteAsync(await StartAsync(), "select answer from kept")).ShouldBe(42);
    }

    [Fact]
    public async Task Revive_StartsTheServerAgain_WhenItDiedUnderTheService()
    {
        var cluster = await StartAsync();
        await ExecuteAsync(cluster, "create table kept as select 42 as answer");
        await KillServerAsync();

        await cluster.ReviveAsync(TestContext.Current.CancellationToken);

        (await ExecuteAsync(cluster, "select answer from kept")).ShouldBe(42);
    }

    [Fact]
    public async Task Start_TakesTheServerOver_WhenTheServiceWasKilled()
    {
        var killed = await StartAsync();
        var server = ServerProcess();
        killed.Dispose();

        var second = await StartAsync();

        ServerProcess().ShouldBe(server);
        second.Stop();
        File.Exists(PidFile).ShouldBeFalse();
    }

    [Fact]
    public async Task Start_IgnoresTheProcessFile_WhenItNamesSomeoneElsesProcess()
    {
        var first = await StartAsync();
        var lines = await File.ReadAllLinesAsync(PidFile);
        first.Stop();
        lines[0] = $"{Environment.ProcessId}";
        await File.WriteAllLinesAsync(PidFile, lines);

        (await ExecuteAsync(await StartAsync(), "select 42")).ShouldBe(42);
        ServerProcess().ShouldNotBe(Environment.ProcessId);
    }

    [Fact]
    public async Task Start_IsRefused_WhenAnotherServiceOwnsTheFolder()
    {
        await StartAsync();

        var fault = await Should.ThrowAsync<SetupException>(StartAsync);

        fault.Message.ShouldStartWith($"Another service uses the data folder {_folder}.");
    }

    [Fact]
    public async Task Start_ListensOnNoNetworkAddress()
    {
        var cluster = await StartAsync();

        (await ExecuteAsync(cluster, "show listen_addresses")).ShouldBe("");
        File.GetUnixFileMode(Path.Combine(_folder, "postgresql", "run")).ShouldBe(
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    [Fact]
    public void Construction_NamesThePackage_WhenThereAreNoPrograms()
    {
        var fault = Should.Throw<SetupException>(
            () => new LocalCluster(_folder, Path.GetTempPath(), "", NullLogger.Instance));

        fault.Message.ShouldContain("Install the package 'postgresql'");
    }

    [Fact]
    public void Construction_IsRefused_WhenTheDataBelongsToAVersionThatIsNotInstalled()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "postgresql", "9"));

        var fault = Should.Throw<SetupException>(() => new LocalCluster(_folder, null, "", NullLogger.Instance));

        fault.Message.ShouldStartWith("The data here belongs to PostgreSQL 9, but this machine has ");
    }

    public void Dispose()
    {
        foreach (var cluster in _clusters)
            cluster.Stop();
        if (Directory.Exists(_folder))
            Directory.Delete(_folder, recursive: true);
    }

    private string PidFile => Directory.EnumerateDirectories(Path.Combine(_folder, "postgresql"))
        .Select(folder => Path.Combine(folder, "postmaster.pid"))
        .First(file => int.TryParse(Path.GetFileName(Path.GetDirectoryName(file)), out _));

    private async Task<LocalCluster> StartAsync()
    {
        var binaries = Environment.GetEnvironmentVariable(PostgresBinaries.Variable);
        var cluster = new LocalCluster(_folder, binaries, "max_connections = 10\nfsync = off\n", NullLogger.Instance);
        _clusters.Add(cluster);
        await cluster.StartAsync(TestContext.Current.CancellationToken);
        return cluster;
    }

    private int ServerProcess() => int.Parse(File.ReadLines(PidFile).First(), CultureInfo.InvariantCulture);

    private async Task KillServerAsync()
    {
        using var server = Process.GetProcessById(ServerProcess());
        server.Kill();
        await server.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    private static async Task<object?> ExecuteAsync(LocalCluster cluster, string sql)
    {
        var address =
            new NpgsqlConnectionStringBuilder(cluster.ConnectionString) { Database = "postgres", Pooling = false };
        await using var connection = new NpgsqlConnection(address.ConnectionString);
        await connection.OpenAsync();
        return await new NpgsqlCommand(sql, connection).ExecuteScalarAsync();
    }
}
