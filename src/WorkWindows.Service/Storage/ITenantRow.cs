namespace WorkWindows.Service.Storage;

/// <summary>
/// A row of one organization. The database fills the column in from the open connection's organization.
/// </summary>
public interface ITenantRow
{
    Guid OrganizationId { get; }
}
