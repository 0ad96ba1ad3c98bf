using System.Globalization;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices.Templates;

namespace WorkWindows.Service.Notices.Certificates;

/// <summary>A certificate that somebody holds.</summary>
public sealed record HeldCertificate(Guid Id, Guid PersonId, string Holder, string Title, LocalDate ValidUntil);

/// <summary>
/// Tells whoever holds a certificate, and the consultants, that it ends: two months, two weeks, and when it has.
/// </summary>
internal static class CertificatesExpiring
{
    /// <summary>Days before the last day: common practice, no source. Below 0 it is over.</summary>
    private static readonly int[] Stages = [-1, 14, 60];

    public static void Plan(Night night, NightPlan plan)
    {
        var ending = night.Certificates.Select(held => (Held: held, Topic: Topic(held, night.Date)))
            .Where(one => one.Topic is not null).ToList();
        foreach (var person in night.People.Values.OrderBy(person => person.Id))
        {
            var news = ending.FindAll(one => (person.IsConsultant || one.Held.PersonId == person.Id)
                && plan.IsNew(night, person.Id, one.Topic!));
            if (news.Count == 0)
                continue;
            var key = $"certificate:{person.Id}:{night.Date:R}";
            var told = plan.Tell(night, person.Id, NoticeKinds.Certificate, key, recipient => new(
                key, NoticeKinds.Certificate, recipient, Notice(night, person, news.ConvertAll(one => one.Held)),
                Calendar: null));
            if (told.IsTold)
                plan.Topics.UnionWith(news.Select(one => (person.Id, one.Topic!)));
        }
    }

    private static string? Topic(HeldCertificate held, LocalDate today)
    {
        var left = Period.DaysBetween(today, held.ValidUntil);
        return Stages.Where(days => left <= days).Select(days => (int?)days).FirstOrDefault() is { } stage
            ? string.Create(CultureInfo.InvariantCulture, $"certificate:{held.Id}:{held.ValidUntil:R}:{stage}")
            : null;
    }

    private static Notice Notice(Night night, Recipient reader, List<HeldCertificate> news) =>
        NoticeTemplates.Fill("certificate", new
        {
            Subject = news.Count == 1
                ? Sentence(news[0], night.Date)
                : $"{news.Count} certificates end or have ended",
            Opening = news.TrueForAll(held => held.PersonId == reader.Id)
                ? "Of your certificates:" : "Of the certificates of your people:",
            Items = news.Select(held => new Item($"{Sentence(held, night.Date)}.")).ToArray(),
            Because = reader.IsConsultant
                ? "You get this as a consultant of the organization." : "You get this because it is yours.",
            Sender = night.Organization,
        });

    private static string Sentence(HeldCertificate held, LocalDate today) =>
        $"{held.Holder}, {held.Title}: {(held.ValidUntil < today ? "ended" : "ends")} {Wording.Of(held.ValidUntil)}";
}
