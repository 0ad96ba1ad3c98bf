using Microsoft.Extensions.DependencyInjection;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Rules.Reading;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Tests.Storage;
using WorkWindows.Service.Windows;

namespace WorkWindows.Browser.Tests.Site;

/// <summary>A third invented consultancy, whose own rule closes a week in February, as it was decided on the third.</summary>
internal static class ReviewScenario
{
    public const string Consultant = "petra.loom@example.org";

    private const string Rules =
        """
        pack: loomfield
        version: "1"
        title: Rules of Loomfield
        level: organization
        rules:
          - id: loomfield.grouse
            title: Leave the grouse their cover in deep winter
            effect: closes
            scope: { practices: [tie-down] }
            when: { calendar: { from: 02-05, to: 02-12 } }
            because: Grouse roost under the tied stems in the coldest week.
            authority: common-practice
            source: { title: "common practice, no source" }
        """;

    public static async Task SeedAsync(TestDatabase database, IServiceProvider services)
    {
        var organization = await database.AddOrganizationAsync("Loomfield");
        await Scenario.AddPersonAsync(services, organization, Consultant, "Petra Loom", Role.Consultant);
        await using var scope = services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentOrganization>().Set(organization);
        var db = scope.ServiceProvider.GetRequiredService<WorkWindowsDb>();
        var property = new Property
        {
            Key = "loomfield",
            Name = "Loomfield North",
            CountyFips = "26161",
            State = "MI",
            TimeZone = "America/Detroit",
        };
        var parcel = new Parcel
        {
            PropertyId = property.Id,
            Key = "cover",
            Name = "Grouse Cover",
            Latitude = 42.29,
            Longitude = -83.71,
        };
        var pack = RulePackReader.Read(Rules);
        db.AddRange(property, parcel);
        db.Add(new PlannedTask { Key = "T1", ParcelId = parcel.Id, PracticeId = "tie-down", CrewSize = 2 });
        db.Add(new StoredPack { Hash = pack.Hash, PackId = pack.Id, Version = pack.Version, Text = Rules });
        db.Add(new OrganizationPack
        {
            PackId = pack.Id,
            Version = pack.Version,
            Hash = pack.Hash,
            ChangedAt = Scenario.Now,
        });
        await db.SaveChangesAsync();
        var days = new DaySpan(new(2026, 2, 3), 60);
        await scope.ServiceProvider.GetRequiredService<DecisionStore>().AddChangedAsync(
            await scope.ServiceProvider.GetRequiredService<TaskEvaluator>()
                .EvaluateAsync(db.PlannedTasks, days, CancellationToken.None),
            days, CancellationToken.None);
        await db.SaveChangesAsync();
    }
}
