using System.Collections.Concurrent;
using Fluid;
using Fluid.Values;
using Microsoft.Extensions.FileProviders;
using WorkWindows.Engine.Safety;

namespace WorkWindows.Service.Notices.Templates;

/// <summary>Fills the templates of notices, which are the Liquid files beside this one.</summary>
internal static class NoticeTemplates
{
    private static readonly FluidParser Parser = new();
    private static readonly ManifestFiles Files = new();
    private static readonly ConcurrentDictionary<string, IFluidTemplate> Parsed = new(StringComparer.Ordinal);
    private static readonly TemplateOptions Options = NewOptions();

    /// <param name="name">The file without its ending.</param>
    /// <param name="values">What it names, in snake case; a value that it names and nobody gives is an error.</param>
    public static Notice Fill(string name, object values)
    {
        var template = Parsed.GetOrAdd(name, static file => Parser.Parse(Files.Read($"{file}.liquid")));
        var context = new TemplateContext(values, Options);
        context.SetValue("cautions", Cautions.Usual);
        return NoticeDocument.Read(template.Render(context));
    }

    private static TemplateOptions NewOptions()
    {
        var options = new TemplateOptions
        {
            MemberAccessStrategy = new UnsafeMemberAccessStrategy
            {
                MemberNameStrategy = MemberNameStrategies.SnakeCase,
            },
            FileProvider = Files,
            StrictVariables = true,
            StrictFilters = true,
        };
        // A name with a line break in it must not begin a heading or an item of its own.
        options.ValueConverters.Add(
            value => value is string text ? new StringValue(text.ReplaceLineEndings(" ")) : null);
        // Nothing is an error in a strict template.
        options.ValueConverters.Add(value => value is Item { Source: null } item ? item with { Source = "" } : null);
        return options;
    }

    /// <summary>The files as they are built into the program.</summary>
    private sealed class ManifestFiles : IFileProvider
    {
        private const string Folder = "notices/";

        public string Read(string name)
        {
            using var reader = new StreamReader(GetFileInfo(name).CreateReadStream());
            return reader.ReadToEnd();
        }

        public IFileInfo GetFileInfo(string subpath) => new File(subpath);

        public IDirectoryContents GetDirectoryContents(string subpath) => NotFoundDirectoryContents.Singleton;

        public Microsoft.Extensions.Primitives.IChangeToken Watch(string filter) => NullChangeToken.Singleton;

        private sealed record File(string Name) : IFileInfo
        {
            private static readonly System.Reflection.Assembly Assembly = typeof(NoticeTemplates).Assembly;

            public bool Exists => Assembly.GetManifestResourceInfo(Folder + Name) is not null;

            public long Length => -1;

            public string? PhysicalPath => null;

            public DateTimeOffset LastModified => DateTimeOffset.UnixEpoch;

            public bool IsDirectory => false;

            public Stream CreateReadStream() => Assembly.GetManifestResourceStream(Folder + Name)
                ?? throw new FileNotFoundException($"There is no template of notices called {Name}.", Name);
        }
    }
}
