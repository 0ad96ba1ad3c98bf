using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Shouldly;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Tests.Storage;

public sealed class TenantIsolationTests(TestDatabase database) : IClassFixture<TestDatabase>
{
    private static readonly Instant Noon = Instant.FromUtc(2025, 3, 1, 12, 0);

    [Fact]
    public async Task Query_ShowsOwnRowsOnly()
    {
        var (ours, theirs) = (await AddWithPropertyAsync("Ours"), await AddWithPropertyAsync("Theirs"));

        (await NamesAsync(ours)).ShouldBe(["Ours"]);
        (await NamesAsync(theirs)).ShouldBe(["Theirs"]);
        (await NamesAsync(null)).ShouldBeEmpty();
    }

    [Fact]
    public async Task Query_ShowsOwnRowsOnly_WhenAPooledConnectionServedAnotherOrganization()
    {
        var (ours, theirs) = (await AddWithPropertyAsync("Ours"), await AddWithPropertyAsync("Theirs"));
        await using var db = database.Open(ours);
        (await db.Properties.CountAsync()).ShouldBe(1);
        await using var raw = await database.ConnectAsync();

        (await ScalarAsync(raw, "select count(*) from properties")).ShouldBe(0L);
        (await NamesAsync(theirs)).ShouldBe(["Theirs"]);
    }

    [Fact]
    public async Task SaveChanges_IsRefused_WhenTheRowNamesAnotherOrganization()
    {
        var (ours, theirs) = (await AddWithPropertyAsync("Ours"), await AddWithPropertyAsync("Theirs"));
        await using var db = database.Open(ours);
        var property = NewProperty("Smuggled");
        db.Add(property);
        db.Entry(property).Property(row => row.OrganizationId).CurrentValue = theirs;

        var fault = await Should.ThrowAsync<DbUpdateException>(() => db.SaveChangesAsync());

        ((PostgresException)fault.InnerException!).MessageText.ShouldContain("row-level security policy");
    }

    [Fact]
    public async Task SaveChanges_IsRefused_WhenTheRowPointsAtAnotherOrganizationsRow()
    {
        var (ours, theirs) = (await AddWithPropertyAsync("Ours"), await AddWithPropertyAsync("Theirs"));
        await using var other = database.Open(theirs);
        var theirProperty = await other.Properties.SingleAsync();
        await using var db = database.Open(ours);
        db.Add(NewParcel(theirProperty.Id));

        var fault = await Should.ThrowAsync<DbUpdateException>(() => db.SaveChangesAsync());

        ((PostgresException)fault.InnerException!).ConstraintName.ShouldBe("fk_parcels_properties_property_id");
    }

    [Theory]
    [InlineData("update properties set name = 'Taken'")]
    [InlineData("delete from properties")]
    [InlineData("delete from organizations")]
    public async Task RawSql_ChangesNothingOfOthers(string sql)
    {
        var theirs = await AddWithPropertyAsync("Theirs");
        await using var raw = await database.ConnectAsync();

        (await new NpgsqlCommand(sql, raw).ExecuteNonQueryAsync()).ShouldBe(0);
        (await NamesAsync(theirs)).ShouldBe(["Theirs"]);
    }

    [Theory]
    [InlineData("set role postgres", "permission denied to set role")]
    [InlineData("set session authorization postgres", "permission denied to set session authorization")]
    [InlineData("alter table properties disable row level security", "must be owner of table")]
    [InlineData("alter table properties no force row level security", "must be owner of table")]
    [InlineData("drop policy own_organization on properties", "must be owner of")]
    [InlineData("create policy everything on properties using (true)", "must be owner of table")]
    [InlineData("alter role workwindows_app bypassrls", "must be superuser")]
    [InlineData("set row_security = off; select * from properties", "would be affected by row-level security")]
    [InlineData("truncate properties", "permission denied for table")]
    [InlineData("create table public.copy as select * from properties", "permission denied for schema public")]
    [InlineData("delete from \"__EFMigrationsHistory\"", "permission denied for table")]
    public async Task RawSql_CannotLeaveTheIsolation(string sql, string refusal)
    {
        await using var raw = await database.ConnectAsync();

        var fault = await Should.ThrowAsync<PostgresException>(() => new NpgsqlCommand(sql, raw).ExecuteNonQueryAsync());

        fault.MessageText.ShouldContain(refusal);
    }

    [Fact]
    public async Task EveryTable_HasAnOrganizationAndAForcedPolicy()
    {
        await using var owner = new NpgsqlConnection(database.Address.Owner);
        await owner.OpenAsync();
        const string unprotected = """
            select coalesce(string_agg(relname, ', '), '') from pg_class table_row
            where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') and relname not like '\_\_EF%'
              and not (relrowsecurity and relforcerowsecurity and exists (
                select from pg_policy where polrelid = table_row.oid and polname = 'own_organization'))
            """;

        (await ScalarAsync(owner, unprotected)).ShouldBe("");
    }

    [Theory]
    [InlineData("update decisions set hash = 'changed'")]
    [InlineData("delete from decisions")]
    [InlineData("update weather_snapshots set content = ''")]
    [InlineData("delete from weather_snapshots")]
    [InlineData("update stored_packs set text = ''")]
    [InlineData("delete from stored_packs")]
    [InlineData("update audit_entries set by = 'nobody'")]
    [InlineData("delete from audit_entries")]
    [InlineData("update rule_overrides set last_day = last_day + 1")]
    [InlineData("delete from rule_overrides")]
    [InlineData("update superseded_readings set value = 0")]
    [InlineData("delete from superseded_readings")]
    [InlineData("delete from station_readings")]
    [InlineData("update forecasts set fetched_at = now()")]
    [InlineData("delete from forecasts")]
    [InlineData("update forecast_readings set value = 0")]
    [InlineData("delete from weather_alert_reports")]
    [InlineData("delete from weather_alerts")]
    [InlineData("update incidents set what_happened = ''")]
    [InlineData("delete from incidents")]
    [InlineData("update checklist_signatures set typed_name = 'x'")]
    [InlineData("delete from checklist_signatures")]
    [InlineData("update check_ins set at = now()")]
    [InlineData("delete from check_ins")]
    [InlineData("update alarm_calls set written_at = now()")]
    [InlineData("delete from alarm_calls")]
    [InlineData("update missed_check_ins set due_at = now()")]
    [InlineData("delete from missed_check_ins")]
    [InlineData("update crew_watches set started_at = now()")]
    [InlineData("delete from crew_watches")]
    public async Task WhatIsKept_CannotBeChanged(string sql)
    {
        await using var raw = await database.ConnectAsync();

        var fault = await Should.ThrowAsync<PostgresException>(() => new NpgsqlCommand(sql, raw).ExecuteNonQueryAsync());

        fault.SqlState.ShouldBe(PostgresErrorCodes.InsufficientPrivilege);
    }

    [Fact]
    public async Task Decisions_AreReadBackByteForByte_AndKeepTheirTaskFromBeingDeleted()
    {
        var ours = await AddWithPropertyAsync("Ours");
        await using var db = database.Open(ours);
        var parcel = NewParcel((await db.Properties.SingleAsync()).Id);
        var task = new PlannedTask { Key = "T1", ParcelId = parcel.Id, PracticeId = "hinge-cut", CrewSize = 2 };
        var decision = NewDecision(task.Id, "snapshot");
        db.AddRange(parcel, task, decision, new WeatherSnapshot { Hash = "snapshot", Content = [1, 2, 3] });
        await db.SaveChangesAsync();
        await using var again = database.Open(ours);

        (await again.Decisions.SingleAsync()).Content.ShouldBe(decision.Content);
        await Should.ThrowAsync<PostgresException>(() => again.Properties.ExecuteDeleteAsync());
    }

    [Fact]
    public async Task OrganizationsOnSchedule_ListsEveryOrganization_WithoutOneBeingSet()
    {
        var id = await database.AddOrganizationAsync("Nightly", "America/Chicago");
        await using var raw = await database.ConnectAsync();

        (await ScalarAsync(raw, $"select time_zone from organizations_on_schedule() where id = '{id}'"))
            .ShouldBe("America/Chicago");
    }

    private async Task<Guid> AddWithPropertyAsync(string name)
    {
        var id = await database.AddOrganizationAsync(name);
        await using var db = database.Open(id);
        db.Add(NewProperty(name));
        await db.SaveChangesAsync();
        return id;
    }

    private async Task<List<string>> NamesAsync(Guid? organization)
    {
        await using var db = database.Open(organization);
        return await db.Properties.Select(property => property.Name).ToListAsync();
    }

    private static Property NewProperty(string name) =>
        new() { Key = name, Name = name, CountyFips = "26065", State = "MI", TimeZone = "America/Detroit" };

    private static Parcel NewParcel(Guid propertyId) =>
        new() { PropertyId = propertyId, Key = "P1", Name = "North", Latitude = 42.7, Longitude = -84.5 };

    private static Decision NewDecision(Guid taskId, string snapshotHash) => new()
    {
        TaskId = taskId,
        EvaluatedAt = Noon,
        FirstDay = new LocalDate(2025, 3, 1),
        LastDay = new LocalDate(2026, 2, 28),
        Hash = "decision",
        Content = [123, 34, 195, 164, 34, 125],
        SnapshotHash = snapshotHash,
        PackHashes = ["us", "us-mi"],
    };

    private static async Task<object?> ScalarAsync(NpgsqlConnection connection, string sql) =>
        await new NpgsqlCommand(sql, connection).ExecuteScalarAsync();
}
