using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Tests.Storage;

namespace WorkWindows.Service.Tests.Commands;

public class CreateOrganizationCommandTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    [Fact]
    public async Task CreateOrganization_LetsTheFirstConsultantIn()
    {
        var (exit, output, _) = await RunAsync("ada.brook@example.org");

        Assert.Equal(0, exit);
        var password = output.TrimEnd().Split(' ')[^1];
        await using var owner = database.Open(await OrganizationAsync("ADA.BROOK@EXAMPLE.ORG"));
        var consultant = await owner.People.SingleAsync(TestContext.Current.CancellationToken);
        Assert.Equal(Role.Consultant, consultant.Role);
        Assert.Equal(
            PasswordVerificationResult.Success,
            new PasswordHasher<Person>().VerifyHashedPassword(consultant, consultant.PasswordHash!, password));
    }

    [Fact]
    public async Task CreateOrganization_StoresNothing_WhenTheAddressIsTaken()
    {
        await RunAsync("noah.field@example.org");

        var (exit, output, error) = await RunAsync("noah.field@example.org");

        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith("The database refused it", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CreateOrganization_NamesAWrongTimeZone()
    {
        var (exit, _, error) = await RunAsync("eve.moor@example.org", "America/Lansing");

        Assert.Equal(2, exit);
        Assert.Equal("--time-zone 'America/Lansing': an IANA zone such as America/Detroit", error.TrimEnd());
    }

    private Task<(int Exit, string Output, string Error)> RunAsync(string email, string zone = "America/Detroit") =>
        Executable.RunAsync(
            [
                "create-organization", "--name", "Quiet Ridge", "--time-zone", zone, "--postal-address", "2 Mill Road",
                "--email", email, "--person", "First Consultant",
            ],
            ("WORKWINDOWS_DATABASE", database.Address.Owner), ("WORKWINDOWS_DATA", Path.GetTempPath()));

    private async Task<Guid> OrganizationAsync(string name)
    {
        await using var nobody = database.Open(null);
        return await nobody.Database.SqlQuery<Guid>($"""select organization_of_login({name}) as "Value" """)
            .SingleAsync(TestContext.Current.CancellationToken);
    }
}
