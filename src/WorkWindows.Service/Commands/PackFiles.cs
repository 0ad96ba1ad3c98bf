using System.Collections.Immutable;
using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using WorkWindows.Engine.Rules;
using WorkWindows.Engine.Rules.Reading;

namespace WorkWindows.Service.Commands;

/// <summary>Rule packs in files of the person's own, below the shipped ones.</summary>
internal static class PackFiles
{
    public static Option<FileInfo[]> Option() => new("--packs")
    {
        AllowMultipleArgumentsPerToken = true,
        Description = "Rule packs of your own below the shipped ones, higher ones first.",
    };

    /// <summary>Adds the packs of files to others, each below those before it, or says all that is wrong.</summary>
    /// <returns>Null when a file is wrong; its faults have been written, one line each.</returns>
    public static ImmutableArray<RulePack>? Add(
        ImmutableArray<RulePack> stack, IEnumerable<FileInfo> files, TextWriter errors)
    {
        var sound = true;
        foreach (var file in files)
        {
            if (TryRead(file, stack, errors, out var pack))
                stack = stack.With(pack);
            else
                sound = false;
        }
        return sound ? stack : null;
    }

    /// <summary>Reads the pack of a file as it stands among others, or writes a line for each of its faults.</summary>
    public static bool TryRead(
        FileInfo file, ImmutableArray<RulePack> stack, TextWriter errors, [NotNullWhen(true)] out RulePack? pack)
    {
        try
        {
            pack = RulePackReader.Read(File.ReadAllText(file.FullName), stack);
            return true;
        }
        catch (PackException e)
        {
            foreach (var fault in e.Faults)
                errors.WriteLine($"{file}:{fault.Line}:{fault.Column}: {fault.What}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors.WriteLine($"{file}: {e.Message}");
        }
        pack = null;
        return false;
    }
}
