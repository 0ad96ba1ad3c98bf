using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>
/// How a person wants to be spoken to. A person without a row has the organization's zone and no quiet hours.
/// </summary>
public sealed class NoticeSettings : ITenantRow
{
    public required Guid PersonId { get; init; }
    public Guid OrganizationId { get; private set; }

    /// <summary>The IANA zone of the quiet hours; null for the organization's.</summary>
    public string? TimeZone { get; set; }

    /// <summary>Whether temperatures are told in °C and not in °F.</summary>
    public bool Celsius { get; set; }

    /// <summary>Whether areas are told in hectares and not in acres.</summary>
    public bool Hectares { get; set; }

    /// <summary>When quiet hours begin; null, as the end is, for none. They may pass midnight.</summary>
    public LocalTime? QuietFrom { get; set; }

    public LocalTime? QuietUntil { get; set; }

    /// <summary>Where signed requests go, or null.</summary>
    public string? WebhookAddress { get; set; }

    /// <summary>What they are signed with; set exactly when there is an address.</summary>
    public string? WebhookSecret { get; set; }

    /// <summary>What the address of the calendar feed ends with; null before a feed is asked for.</summary>
    public string? CalendarKey { get; set; }

    /// <summary>What the personal link to a landowner's page ends with; null where there is none.</summary>
    public string? LandKey { get; set; }
}

internal sealed class NoticeSettingsMapping : IEntityTypeConfiguration<NoticeSettings>
{
    public void Configure(EntityTypeBuilder<NoticeSettings> builder)
    {
        builder.ToTable("notice_settings", table =>
        {
            table.HasCheckConstraint("ck_notice_settings_quiet",
                "(quiet_from is null) = (quiet_until is null) and quiet_from <> quiet_until");
            table.HasCheckConstraint(
                "ck_notice_settings_webhook", "(webhook_address is null) = (webhook_secret is null)");
        });
        builder.HasKey(settings => settings.PersonId);
        // Whoever asks for a feed has only its key.
        builder.HasIndex(settings => settings.CalendarKey).IsUnique();
        builder.HasIndex(settings => settings.LandKey).IsUnique();
        builder.HasOne<Person>().WithOne().HasForeignKey<NoticeSettings>(settings => settings.PersonId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
