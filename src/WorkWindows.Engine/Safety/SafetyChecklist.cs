using System.Collections.Immutable;
using WorkWindows.Engine.Decisions;
using WorkWindows.Engine.Practices;

namespace WorkWindows.Engine.Safety;

/// <summary>
/// What a crew wears, carries, does and stops for, put together from its work, the day, the season and the parcel.
/// </summary>
/// <remarks>Sources: docs/rules/checklist.md.</remarks>
public sealed record SafetyChecklist(Practice Practice, ImmutableArray<SafetyItem> Items)
{
    /// <summary>The form of the bytes that a version is the hash of. It never changes for versions that were signed.</summary>
    private const string Form = "checklist-1";

    /// <summary>Every item there is besides those that rules ask for, each once, in its general form.</summary>
    public static ImmutableArray<SafetyItem> AllItems { get; } =
    [
        .. EverybodyItems.All, .. FirstAidItems.All, .. SawItems.All, .. FellingItems.All, .. OtherWorkItems.All,
    ];

    /// <summary>
    /// SHA-256 of what is shown, lower-case hexadecimal: two lists have the same version exactly when their lines say the
    /// same from the same sources in the same order.
    /// </summary>
    public string Version => CanonicalJson.Hash(Content.AsSpan());

    /// <summary>The bytes that <see cref="Version"/> is the hash of: JSON without white space.</summary>
    public ImmutableArray<byte> Content => [.. CanonicalJson.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("form", Form);
        json.WriteString("practice", Practice.Id);
        json.WriteStartArray("items");
        foreach (var item in Items)
        {
            json.WriteStartObject();
            json.WriteString("id", item.Id);
            json.WriteString("text", item.Text);
            json.Strings("parts", item.Parts);
            json.WriteString("kind", item.Kind.ToString());
            json.WriteString("source", item.Source.ToString());
            json.WriteString("authority", item.Authority.ToString());
            json.WriteBoolean("fromMemory", item.FromMemory);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    })];

    /// <returns>
    /// The items that go with the scene, by kind and within a kind from the general to the special; never empty. An item
    /// whose figure is not known stands in its general form.
    /// </returns>
    public static SafetyChecklist For(SafetyScene scene) => new(scene.Practice,
    [
        .. scene.Asked.Concat(AllItems.Where(item => item.GoesWith(scene)).Select(item => SceneTexts.In(scene, item))
            .OfType<SafetyItem>()).OrderBy(item => item.Kind),
    ]);
}
