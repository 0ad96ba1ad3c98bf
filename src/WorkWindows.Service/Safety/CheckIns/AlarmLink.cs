using System.Security.Cryptography;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Safety.CheckIns;

/// <summary>
/// The signed address by which a contact, who may have no account, takes a missed check-in over. Signed with a key of
/// the watch, so that any worker can write it and any server check it.
/// </summary>
public sealed class AlarmLink(IOptions<SiteOptions> site)
{
    private const int KeyBytes = 32;

    /// <summary>Whether it is known where the pages are reached.</summary>
    public bool IsPossible => site.Value.Address is not null;

    public static byte[] NewKey() => RandomNumberGenerator.GetBytes(KeyBytes);

    /// <returns>
    /// The address, with the signature where logs of requests leave it out; null where it is not known where the pages
    /// are reached.
    /// </returns>
    public string? Of(CrewWatch watch, Guid organizationId, AlarmCall call) =>
        site.Value.PageAddress($"/alarms/{organizationId}/{call.Id}?signature={Sign(watch, call)}");

    public static string Sign(CrewWatch watch, AlarmCall call) =>
        LinkSignature.Of(watch.LinkKey, call.Id.ToByteArray());

    public static bool IsSigned(CrewWatch watch, AlarmCall call, string? signature) =>
        LinkSignature.IsOf(watch.LinkKey, call.Id.ToByteArray(), signature);
}
