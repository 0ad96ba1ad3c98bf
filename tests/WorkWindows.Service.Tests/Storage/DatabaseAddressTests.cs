using Npgsql;
using Shouldly;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Tests.Storage;

public sealed class DatabaseAddressTests
{
    [Fact]
    public void Of_DerivesTheSamePassword_WhereverTheOwnersIsKnown()
    {
        var one = DatabaseAddress.Of("Host=a;Database=d;Username=o;Password=first");
        var two = DatabaseAddress.Of("Host=b;Database=e;Username=o;Password=first");
        var other = DatabaseAddress.Of("Host=a;Database=d;Username=o;Password=second");

        one.AppPassword.ShouldBe(two.AppPassword);
        one.AppPassword.ShouldNotBe(other.AppPassword);
        one.AppPassword!.ShouldNotContain("first");
        var app = new NpgsqlConnectionStringBuilder(one.App);
        (app.Username, app.Password, app.Host).ShouldBe(("workwindows_app", one.AppPassword, "a"));
    }

    [Fact]
    public void Of_HasNoPassword_OnASocketThatAsksForNone() =>
        DatabaseAddress.Of("Host=/run/here;Database=d;Username=o").AppPassword.ShouldBeNull();

    [Fact]
    public void Of_IsRefused_WithoutADatabase() =>
        Should.Throw<ArgumentException>(() => DatabaseAddress.Of("Host=a;Username=o"))
            .Message.ShouldContain("names no database");
}
