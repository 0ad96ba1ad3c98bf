using System.Diagnostics;
using WorkWindows.Service.Tests.Hosting;
using WorkWindows.Service.Tests.Properties;
namespace WorkWindows.Service.Tests.Weather;
public sealed class TempTiming(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    private static TimeSpan Pg() => Process.GetProcessesByName("postgres").Aggregate(TimeSpan.Zero, (a, p) => a + p.TotalProcessorTime);
    [Fact]
    public async Task T()
    {
        var client = await service.MachineAsync(await service.Database.AddOrganizationAsync("Org"));
        await Land.CreateAsync(client, -93.4, 44.6, "27037", "MN");
        var file = GivenStation.MinneapolisFile(y => y is > 1975 and <= 2015);
        await GivenStation.PutAsync(client, GivenStation.StateCollege, 40.7933, -77.8672);
        await GivenStation.ReadingsAsync(client, GivenStation.StateCollege, System.Text.Encoding.ASCII.GetBytes(GivenStation.StateCollegeFile));
        await GivenStation.PutAsync(client, GivenStation.Minneapolis, 44.8831, -93.2289, 265.8);
        for (var i = 0; i < 4; i++)
        {
            var sw = Stopwatch.StartNew(); var own = Process.GetCurrentProcess().TotalProcessorTime; var pg = Pg();
            var a = await GivenStation.ReadingsAsync(client, GivenStation.Minneapolis, file);
            Console.WriteLine($"TIMING CPU own {(Process.GetCurrentProcess().TotalProcessorTime - own).TotalMilliseconds} pg {(Pg() - pg).TotalMilliseconds}");
            Console.WriteLine($"TIMING {sw.ElapsedMilliseconds} ms {a} {file.Length}");
        }
        var parse = Stopwatch.StartNew();
        WorkWindows.Feeds.Stations.StationFile.Read(new MemoryStream(file));
        Console.WriteLine($"TIMING parse {parse.ElapsedMilliseconds}");
    }
}
