using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Audit;
using WorkWindows.Service.Crews;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices;
using WorkWindows.Service.Notices.Calendars;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Rules;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Safety.Incidents;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Weather;
using WorkWindows.Service.Windows;
using WorkWindows.Service.WorkDone;

namespace WorkWindows.Service.Storage;

/// <summary>Everything that is kept. What is visible of it depends on <see cref="CurrentOrganization"/>.</summary>
public sealed class WorkWindowsDb(DbContextOptions<WorkWindowsDb> options)
    : IdentityUserContext<Person, Guid>(options)
{
    public DbSet<Organization> Organizations => Set<Organization>();
    public DbSet<Person> People => Set<Person>();
    public DbSet<ApiKey> ApiKeys => Set<ApiKey>();
    public DbSet<Property> Properties => Set<Property>();
    public DbSet<Parcel> Parcels => Set<Parcel>();
    public DbSet<SiteObservation> SiteObservations => Set<SiteObservation>();
    public DbSet<PlannedTask> PlannedTasks => Set<PlannedTask>();
    public DbSet<TaskPrerequisite> TaskPrerequisites => Set<TaskPrerequisite>();
    public DbSet<Station> Stations => Set<Station>();
    public DbSet<StationReading> StationReadings => Set<StationReading>();
    public DbSet<SupersededReading> SupersededReadings => Set<SupersededReading>();
    public DbSet<FeedState> FeedStates => Set<FeedState>();
    public DbSet<ParcelStation> ParcelStations => Set<ParcelStation>();
    public DbSet<Forecast> Forecasts => Set<Forecast>();
    public DbSet<ForecastReading> ForecastReadings => Set<ForecastReading>();
    public DbSet<WeatherAlertReport> WeatherAlertReports => Set<WeatherAlertReport>();
    public DbSet<SiteReadingRow> SiteReadings => Set<SiteReadingRow>();
    public DbSet<StoredOverride> RuleOverrides => Set<StoredOverride>();
    public DbSet<OrganizationPack> OrganizationPacks => Set<OrganizationPack>();
    public DbSet<StoredPack> StoredPacks => Set<StoredPack>();
    public DbSet<WeatherSnapshot> WeatherSnapshots => Set<WeatherSnapshot>();
    public DbSet<Decision> Decisions => Set<Decision>();
    public DbSet<AuditEntry> AuditEntries => Set<AuditEntry>();
    public DbSet<Announcement> Announcements => Set<Announcement>();
    public DbSet<Message> Messages => Set<Message>();
    public DbSet<DueLook> DueLooks => Set<DueLook>();
    public DbSet<TaskOutlook> TaskOutlooks => Set<TaskOutlook>();
    public DbSet<SeasonEnd> SeasonEnds => Set<SeasonEnd>();
    public DbSet<ToldTopic> ToldTopics => Set<ToldTopic>();
    public DbSet<NoticeChoice> NoticeChoices => Set<NoticeChoice>();
    public DbSet<NoticeSettings> NoticeSettings => Set<NoticeSettings>();
    public DbSet<CalendarDay> CalendarDays => Set<CalendarDay>();
    public DbSet<PersonCertificate> Certificates => Set<PersonCertificate>();
    public DbSet<BouncingAddress> BouncingAddresses => Set<BouncingAddress>();
    public DbSet<CrewWatch> CrewWatches => Set<CrewWatch>();
    public DbSet<CheckIn> CheckIns => Set<CheckIn>();
    public DbSet<MissedCheckIn> MissedCheckIns => Set<MissedCheckIn>();
    public DbSet<AlarmCall> AlarmCalls => Set<AlarmCall>();
    public DbSet<ChecklistSignature> ChecklistSignatures => Set<ChecklistSignature>();
    public DbSet<Incident> Incidents => Set<Incident>();
    public DbSet<Crew> Crews => Set<Crew>();
    public DbSet<Equipment> Equipment => Set<Equipment>();
    public DbSet<Absence> Absences => Set<Absence>();
    public DbSet<Booking> Bookings => Set<Booking>();
    public DbSet<DriveTime> DriveTimes => Set<DriveTime>();
    public DbSet<PracticeSetting> PracticeSettings => Set<PracticeSetting>();
    public DbSet<PlanningSetting> PlanningSettings => Set<PlanningSetting>();
    public DbSet<StoredPlan> CrewPlans => Set<StoredPlan>();
    public DbSet<WorkRecord> WorkRecords => Set<WorkRecord>();
    public DbSet<WorkPhoto> WorkPhotos => Set<WorkPhoto>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(WorkWindowsDb).Assembly);
        // A type without a key is only ever part of another's column.
        foreach (var type in builder.Model.GetEntityTypes().Where(type => type.FindPrimaryKey() is not null).ToList())
        {
            if (type.FindProperty("Id") is { } id && id.ClrType == typeof(Guid))
                id.ValueGenerated = ValueGenerated.Never;
            if (type.ClrType != typeof(Organization))
                BelongsToOrganization(builder, type);
        }
    }

    private static void BelongsToOrganization(ModelBuilder builder, IMutableEntityType type)
    {
        var entity = builder.Entity(type.ClrType);
        entity.Property<Guid>(nameof(ITenantRow.OrganizationId)).ValueGeneratedOnAdd()
            .HasDefaultValueSql($"current_setting('{CurrentOrganization.Setting}')::uuid");
        entity.HasOne(typeof(Organization)).WithMany().HasForeignKey(nameof(ITenantRow.OrganizationId))
            .OnDelete(DeleteBehavior.Restrict);
    }
}
