using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Demo;

/// <summary>An invented consultancy to try things with.</summary>
internal sealed partial class DemoOrganization(
    WorkWindowsDb db, CurrentOrganization current, UserManager<Person> people, DemoScenario scenario,
    ILogger<DemoOrganization> logger)
{
    public const string ConsultantEmail = "mara.holt@example.org";
    public const string Password = "oak-hinge-2026";

    private const long LoadLock = 0x44454D4F;

    private static readonly (string Name, string Email, Role Role)[] People =
    [
        ("Mara Holt", ConsultantEmail, Role.Consultant),
        ("Jonas Reed", "jonas.reed@example.org", Role.CrewLead),
        ("Ines Calder", "ines.calder@example.org", Role.CrewMember),
        ("Tove Lind", "tove.lind@example.org", Role.CrewLead),
        ("Abel Quist", "abel.quist@example.org", Role.CrewMember),
        ("Walter Brandt", "walter.brandt@example.org", Role.Landowner),
        ("Odile Farrow", "odile.farrow@example.org", Role.Landowner),
        ("Sam Whitlock", "sam.whitlock@example.org", Role.Landowner),
    ];

    /// <summary>Loads it into a database that holds no organization yet.</summary>
    /// <returns>Whether the database holds the demo organization now.</returns>
    public async Task<bool> LoadAsync(CancellationToken cancellation)
    {
        var organization = new Organization
        {
            Name = "Larkspur Habitat Consulting",
            TimeZone = "America/Detroit",
            PostalAddress = "14 Millrace Lane, Larkspur, MI 48800",
        };
        current.Set(organization.Id);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // Two instances may start at once; the second finds what the first has loaded.
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({LoadLock})", cancellation);
        if (await db.Database.SqlQuery<Guid>($"""select id as "Value" from organizations_on_schedule()""")
            .AnyAsync(cancellation))
        {
            return await IsPresentAsync(cancellation);
        }

        db.Add(organization);
        await db.SaveChangesAsync(cancellation);
        foreach (var (name, email, role) in People)
        {
            var person = new Person { UserName = email, Email = email, DisplayName = name, Role = role };
            var result = await people.CreateAsync(person, Password);
            if (!result.Succeeded)
                throw new InvalidOperationException($"The demo's {email} was refused: {result}.");
        }

        await scenario.LoadAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        LogLoaded(organization.Name);
        return true;
    }

    private Task<bool> IsPresentAsync(CancellationToken cancellation)
    {
        var name = people.NormalizeName(ConsultantEmail);
        return db.Database.SqlQuery<bool>($"""select organization_of_login({name}) is not null as "Value" """)
            .SingleAsync(cancellation);
    }

    [LoggerMessage(LogLevel.Information, "Loaded the demo organization {Organization}")]
    private partial void LogLoaded(string organization);
}
