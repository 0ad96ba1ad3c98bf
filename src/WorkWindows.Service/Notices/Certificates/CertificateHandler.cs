using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Certificates;

public sealed class CertificateHandler(WorkWindowsDb db)
{
    /// <returns>By when they end; null where there is no such person.</returns>
    public async Task<IReadOnlyList<CertificateForm>?> ReadAsync(Guid personId, CancellationToken cancellation) =>
        await db.People.AnyAsync(person => person.Id == personId, cancellation)
            ? await db.Certificates.Where(held => held.PersonId == personId)
                .OrderBy(held => held.ValidUntil).ThenBy(held => held.Title)
                .Select(held => new CertificateForm(held.Title, held.ValidUntil)).ToListAsync(cancellation)
            : null;

    /// <summary>
    /// Replaces all of a person's. One that is kept under its title is renewed and not told as a new one.
    /// </summary>
    public async Task<Change<IReadOnlyList<CertificateForm>>> SaveAsync(
        Guid personId, IReadOnlyList<CertificateForm> forms, CancellationToken cancellation)
    {
        if (!await db.People.AnyAsync(person => person.Id == personId, cancellation))
            return Change.NotFound<IReadOnlyList<CertificateForm>>();
        var faults = new FieldFaults();
        for (var index = 0; index < forms.Count; index++)
        {
            var field = $"[{index}]";
            if (forms[index] is null)
            {
                faults.Add(field, null, "a title and a validUntil");
                continue;
            }
            var title = faults.Required($"{field}.title", forms[index].Title, FieldText.IsName, FieldText.Name);
            if (forms.Take(index).Any(other => other?.Title?.Trim() == title))
                faults.Add($"{field}.title", title, "each title once");
            if (forms[index].ValidUntil is null)
                faults.Add($"{field}.validUntil", null, "the last day on which it is valid, such as 2027-03-31");
        }
        if (faults.Any)
            return Change.Refused<IReadOnlyList<CertificateForm>>(faults);
        var wanted = forms.ToDictionary(form => form.Title!.Trim(), form => form.ValidUntil!.Value);
        var held = await db.Certificates.Where(one => one.PersonId == personId).ToListAsync(cancellation);
        db.RemoveRange(held.Where(one => !wanted.ContainsKey(one.Title)));
        foreach (var one in held.Where(one => wanted.ContainsKey(one.Title)))
            one.ValidUntil = wanted[one.Title];
        var added = wanted.Where(form => !held.Exists(one => one.Title == form.Key));
        db.AddRange(added.Select(form => new PersonCertificate
        {
            PersonId = personId,
            Title = form.Key,
            ValidUntil = form.Value,
        }));
        await db.SaveChangesAsync(cancellation);
        return Change.Done((await ReadAsync(personId, cancellation))!);
    }
}
