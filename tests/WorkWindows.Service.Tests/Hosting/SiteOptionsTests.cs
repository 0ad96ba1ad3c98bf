using System.ComponentModel.DataAnnotations;
using Shouldly;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Tests.Hosting;

public sealed class SiteOptionsTests
{
    [Theory]
    [InlineData(null, true)]
    [InlineData("https://woods.example.org", true)]
    [InlineData("http://10.0.0.4:5080/woods/", true)]
    [InlineData("woods.example.org", false)]
    [InlineData("ftp://woods.example.org", false)]
    [InlineData("https://woods.example.org/?a=1", false)]
    public void Address_IsWhereThePagesAre_OrNotSet(string? address, bool accepted)
    {
        var faults = new List<ValidationResult>();
        var options = new SiteOptions { Address = address };

        Validator.TryValidateObject(options, new(options), faults).ShouldBe(accepted);

        faults.ShouldAllBe(fault => fault.ErrorMessage!.StartsWith("Site:Address must be the address of the pages"));
    }
}
