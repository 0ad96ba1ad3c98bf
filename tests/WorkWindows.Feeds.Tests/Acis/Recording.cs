using YamlDotNet.RepresentationModel;

namespace WorkWindows.Feeds.Tests.Acis;

/// <summary>The recorded requests and replies of the station data service.</summary>
internal static class Recording
{
    public static string Request(string file) => Scalar(file, "request", "body");

    public static string Reply(string file) => Scalar(file, "response", "body", "string");

    private static string Scalar(string file, params string[] path)
    {
        using var text = File.OpenText(ProjectFiles.Reference($"feeds/acis/{file}"));
        var yaml = new YamlStream();
        yaml.Load(text);
        var node = yaml.Documents[0].RootNode["interactions"][0];
        foreach (var name in path)
            node = node[name];
        return ((YamlScalarNode)node).Value!;
    }
}
