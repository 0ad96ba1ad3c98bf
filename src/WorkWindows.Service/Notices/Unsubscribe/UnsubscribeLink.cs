using System.Text;
using Microsoft.Extensions.Options;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Notices.Unsubscribe;

/// <summary>
/// The signed address by which a reader turns a kind of mail off without signing in. Signed with a key of the
/// organization, so that any worker can write it and any server check it.
/// </summary>
public sealed class UnsubscribeLink(IOptions<SiteOptions> site)
{
    /// <returns>
    /// The address, with the signature where logs of requests leave it out; null for what may not be turned off, for
    /// somebody outside of the organization, and where it is not known where the pages are reached.
    /// </returns>
    public string? Of(Organization organization, Message message) =>
        message.RecipientId is { } person && NoticeKinds.Find(message.Kind)?.MayBeTurnedOff == true
            ? site.Value.PageAddress(
                $"/unsubscribe/{organization.Id}/{person}/{message.Kind}"
                + $"?signature={Sign(organization, person, message.Kind)}")
            : null;

    public static string Sign(Organization organization, Guid person, string kind) =>
        LinkSignature.Of(organization.LinkKey, Said(person, kind));

    public static bool IsSigned(Organization organization, Guid person, string kind, string? signature) =>
        LinkSignature.IsOf(organization.LinkKey, Said(person, kind), signature);

    private static byte[] Said(Guid person, string kind) => Encoding.UTF8.GetBytes($"unsubscribe:{person}:{kind}");
}
