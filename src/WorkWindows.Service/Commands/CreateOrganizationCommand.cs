using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Commands;

/// <summary>Opens an organization: there is no registration, so this is how the first consultant gets in.</summary>
internal static class CreateOrganizationCommand
{
    public static Command Create(Func<string[], WebApplication> compose)
    {
        var name = new Option<string>("--name") { Required = true, Description = "The organization's name." };
        var zone = new Option<string>("--time-zone")
        {
            Required = true,
            Description = "IANA zone of its nightly run, such as America/Detroit.",
        };
        var address = new Option<string>("--postal-address")
        {
            Required = true,
            Description = "Stands at the foot of every notice.",
        };
        var email = new Option<string>("--email") { Required = true, Description = "Mail address of the consultant." };
        var person = new Option<string>("--person") { Required = true, Description = "Name of the consultant." };
        zone.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } id && DateTimeZoneProviders.Tzdb.GetZoneOrNull(id) is null)
                result.AddError($"--time-zone '{id}': an IANA zone such as America/Detroit");
        });
        var command = new Command("create-organization", "Open an organization with its first consultant.")
        {
            name, zone, address, email, person,
        };
        command.SetAction((result, cancellation) => RunAsync(
            compose([]),
            new()
            {
                Name = result.GetRequiredValue(name),
                TimeZone = result.GetRequiredValue(zone),
                PostalAddress = result.GetRequiredValue(address),
            },
            new()
            {
                UserName = result.GetRequiredValue(email),
                Email = result.GetRequiredValue(email),
                DisplayName = result.GetRequiredValue(person),
                Role = Role.Consultant,
            },
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(
        WebApplication app, Organization organization, Person consultant, CancellationToken cancellation)
    {
        await using var composed = app;
        var server = app.Services.GetRequiredService<DatabaseServer>();
        try
        {
            await server.StartAsync(cancellation);
            await DatabaseMigrator.MigrateAsync(server.Address, cancellation);
            await using var scope = app.Services.CreateAsyncScope();
            var (password, result) = await scope.ServiceProvider.GetRequiredService<OrganizationSetup>()
                .CreateAsync(organization, consultant, cancellation);
            if (password is null)
                return CommandLine.Refuse(string.Join('\n', result.Errors.Select(error => error.Description)));
            Console.WriteLine($"{organization.Name} is open. {consultant.Email} signs in with the password {password}");
            return 0;
        }
        catch (SetupException fault)
        {
            return CommandLine.Refuse(fault.Message);
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException database)
        {
            return CommandLine.Refuse($"The database refused it: {database.MessageText}");
        }
    }
}
