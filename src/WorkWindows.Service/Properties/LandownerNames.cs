using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Properties;

/// <summary>
/// The people whom a file of parcels names as landowners. New ones have no password, so they cannot sign in.
/// </summary>
public sealed class LandownerNames(WorkWindowsDb db, ILookupNormalizer normalizer)
{
    private readonly Dictionary<string, Person> _byMail = [];
    private readonly Dictionary<string, Person> _byName = [];

    /// <summary>Finds or adds everyone the rows name; the caller saves.</summary>
    public async Task LoadAsync(IReadOnlyList<ParcelRow> rows, CancellationToken cancellation)
    {
        var named = rows.GroupBy(row => row.Property).Select(property => Named([.. property]))
            .Where(person => person is not (null, null)).ToList();
        var mails = named.Select(person => normalizer.NormalizeEmail(person.Email)).OfType<string>().ToList();
        foreach (var person in await db.People.Where(person => mails.Contains(person.NormalizedEmail!))
            .ToListAsync(cancellation))
        {
            _byMail[person.NormalizedEmail!] = person;
        }
        var names = named.Where(person => person.Email is null).Select(person => person.Name!).ToList();
        foreach (var person in await db.People
            .Where(person => person.Role == Role.Landowner && person.Email == null && names.Contains(
                person.DisplayName))
            .ToListAsync(cancellation))
        {
            _byName[person.DisplayName] = person;
        }
        foreach (var (name, email) in named)
            await LoadAsync(name, email, cancellation);
    }

    /// <returns>The landowner of a property's rows, or null where they name none.</returns>
    public Person? Find(IReadOnlyList<ParcelRow> rows) => Named(rows) switch
    {
        (null, null) => null,
        ({ } name, null) => _byName[name],
        (_, { } email) => _byMail[normalizer.NormalizeEmail(email)],
    };

    private async Task LoadAsync(string? name, string? email, CancellationToken cancellation)
    {
        if (email is null)
        {
            if (!_byName.ContainsKey(name!))
                _byName[name!] = Add(name!, null, null);
        }
        else if (_byMail.TryGetValue(normalizer.NormalizeEmail(email), out var person))
        {
            // A consultant who owns land keeps the name they chose.
            if (person.Role == Role.Landowner)
                person.DisplayName = name ?? person.DisplayName;
        }
        else
        {
            // A mail address signs in to one organization only; elsewhere it is an address and no more.
            var login = normalizer.NormalizeName(email);
            var isTaken = await db.Database
                .SqlQuery<bool>($"""select organization_of_login({login}) is not null as "Value" """)
                .SingleAsync(cancellation);
            _byMail[normalizer.NormalizeEmail(email)] = Add(name ?? email, email, isTaken ? null : email);
        }
    }

    private Person Add(string name, string? email, string? login)
    {
        var person = new Person
        {
            DisplayName = name,
            Role = Role.Landowner,
            Email = email,
            NormalizedEmail = normalizer.NormalizeEmail(email),
            UserName = login,
            NormalizedUserName = normalizer.NormalizeName(login),
            SecurityStamp = Guid.NewGuid().ToString(),
        };
        db.Add(person);
        return person;
    }

    private static (string? Name, string? Email) Named(IReadOnlyList<ParcelRow> rows) => (
        rows.Select(row => row.Landowner).FirstOrDefault(name => name is not null),
        rows.Select(row => row.LandownerEmail).FirstOrDefault(email => email is not null));
}
