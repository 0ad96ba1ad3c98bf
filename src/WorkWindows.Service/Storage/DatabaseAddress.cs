using System.Security.Cryptography;
using System.Text;
using Npgsql;

namespace WorkWindows.Service.Storage;

/// <summary>Where the database is: once for the owner, who migrates, and once for the application.</summary>
/// <param name="Owner">A role that may create roles and owns the tables.</param>
/// <param name="App">The role <see cref="AppRole"/>, which row-level security binds.</param>
/// <param name="AppPassword">Null where the server asks for none, as on a local socket.</param>
public sealed record DatabaseAddress(string Owner, string App, string? AppPassword)
{
    public const string AppRole = "workwindows_app";

    public static DatabaseAddress Of(string ownerConnection)
    {
        // The owner connects once, at the start, and its locks must end with its connection.
        var owner = new NpgsqlConnectionStringBuilder(ownerConnection) { Pooling = false };
        if (string.IsNullOrEmpty(owner.Database))
            throw new ArgumentException("The connection string names no database (Database=...).");
        var password = string.IsNullOrEmpty(owner.Password) ? null : Derive(owner.Password);
        var app = new NpgsqlConnectionStringBuilder(ownerConnection) { Username = AppRole, Password = password };
        return new DatabaseAddress(owner.ConnectionString, app.ConnectionString, password);
    }

    /// <summary>Derived, not drawn: every instance that knows the owner's password knows this one.</summary>
    private static string Derive(string ownerPassword) => Convert.ToHexStringLower(
        HMACSHA256.HashData(Encoding.UTF8.GetBytes(ownerPassword), Encoding.UTF8.GetBytes(AppRole)));
}
