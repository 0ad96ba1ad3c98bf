using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>One owner's land.</summary>
public sealed class Property : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }

    /// <summary>The organization's own name for it in files, so that an import can be repeated.</summary>
    public required string Key { get; init; }

    public required string Name { get; set; }
    public Guid? LandownerId { get; set; }

    /// <summary>Five digits, the first two those of the state.</summary>
    public required string CountyFips { get; set; }

    /// <summary>Two-letter postal code.</summary>
    public required string State { get; set; }

    /// <summary>The IANA zone whose days its verdicts are about.</summary>
    public required string TimeZone { get; set; }

    public string? AccessNotes { get; set; }

    /// <summary>The address nearest to the work, for whoever is called to it; null when nobody has entered it.</summary>
    public string? NearestAddress { get; set; }

    /// <summary>Name and number as entered, and so with those that follow; null when nobody has entered it.</summary>
    public string? Sheriff { get; set; }

    public string? Hospital { get; set; }
    public string? PoisonCentre { get; set; }

    /// <summary>Whoever switches off a power line.</summary>
    public string? Utility { get; set; }

    public Person? Landowner { get; private set; }
    public ICollection<Parcel> Parcels { get; } = [];
    public ICollection<SiteObservation> Observations { get; } = [];
}

internal sealed class PropertyMapping : IEntityTypeConfiguration<Property>
{
    public void Configure(EntityTypeBuilder<Property> builder)
    {
        builder.ToTable("properties");
        builder.HasIndex(property => new { property.OrganizationId, property.Key }).IsUnique();
        builder.HasOne(property => property.Landowner).WithMany().HasForeignKey(property => property.LandownerId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
