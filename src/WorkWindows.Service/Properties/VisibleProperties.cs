using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>The properties that the caller may see: a landowner their own, everyone else the organization's.</summary>
public sealed class VisibleProperties(WorkWindowsDb db, Caller caller)
{
    // A landowner who is nobody owns nothing, least of all what has no owner.
    public IQueryable<Property> All => caller.Role == Role.Landowner
        ? db.Properties.Where(property => property.LandownerId != null && property.LandownerId == caller.PersonId)
        : db.Properties;
}
