using CsCheck;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Engine.Tests.Rules;

/// <summary>
/// Every file of the folder BadPacks has a slip that its author may make. Its first lines say what the reader answers.
/// </summary>
public class BadPackTests
{
    private const string Expectation = "# expect: ";

    private static readonly string Folder =
        Path.Combine(ProjectFiles.Root, "tests", "WorkWindows.Engine.Tests", "Rules", "BadPacks");

    private static readonly RulePack Above =
        RulePackReader.Read(File.ReadAllText(Path.Combine(Folder, "above", "state.yaml")));

    public static TheoryData<string> Files =>
    [
        .. Directory.EnumerateFiles(Folder, "*.yaml").Select(file => Path.GetFileName(file))
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void Corpus_HoldsAtLeast60Files() => Assert.InRange(Files.Count, 60, int.MaxValue);

    [Theory]
    [MemberData(nameof(Files))]
    public void Read_AnswersAsTheFileExpects(string file)
    {
        var text = File.ReadAllText(Path.Combine(Folder, file));
        var expected = text.Split('\n').TakeWhile(line => line.StartsWith(Expectation, StringComparison.Ordinal))
            .Select(line => line[Expectation.Length..]).ToArray();

        var e = Assert.Throws<PackException>(() => RulePackReader.Read(text, [Above]));

        Assert.NotEmpty(expected);
        Assert.Equal(expected, e.Faults.Select(fault => fault.ToString()));
    }

    [Fact]
    public void Read_GivesAPackOrItsFaults_WhateverLettersAreStruckOutOrPutIn()
    {
        var sound = File.ReadAllText(Path.Combine(Folder, "above", "state.yaml"));
        string[] signs =
        [
            "", "\t", "\n", ": ", "- ", "[", "]", "{", "}", "\"", "'", "#", "&a ", "*a", "!", "? ", "|", ">", "%", "@",
            "\0",
        ];
        Gen.Select(Gen.Int[0, sound.Length - 1], Gen.Int[0, 12], Gen.Int[0, signs.Length - 1])
            .Sample((at, struck, put) =>
            {
                var text = sound[..at] + signs[put] + sound[Math.Min(sound.Length, at + struck)..];
                try
                {
                    return RulePackReader.Read(text).Rules.Length > 0;
                }
                catch (PackException e)
                {
                    return e.Faults.Count > 0
                        && e.Faults.All(fault => fault is { Line: > 0, Column: > 0, Accepted.Length: > 0 });
                }
            }, iter: 5000);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{ a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void Read_RefusesAnyDepth(string opening) =>
        Assert.Throws<PackException>(() => RulePackReader.Read(string.Concat(Enumerable.Repeat(opening, 20_000))));
}
