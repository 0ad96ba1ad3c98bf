using Shouldly;
using WorkWindows.Service.Rules;

namespace WorkWindows.Service.Tests.Rules;

public sealed class PackVersionTests
{
    [Theory]
    [InlineData("2", "1")]
    [InlineData("10", "9")]
    [InlineData("2026.10", "2026.9")]
    [InlineData("2026.1", "2026")]
    [InlineData("1.0.1", "1.0")]
    [InlineData("1b", "1a")]
    [InlineData("v2", "v1")]
    [InlineData("99999999999999999999999", "9")]
    public void IsHigher_ComparesNumbersAsNumbers(string higher, string lower)
    {
        PackVersion.IsHigher(higher, lower).ShouldBeTrue();
        PackVersion.IsHigher(lower, higher).ShouldBeFalse();
        PackVersion.IsHigher(higher, higher).ShouldBeFalse();
    }
}
