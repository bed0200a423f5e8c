using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace GaitWatch.Web;

/// <summary>
/// A section of the texts files, read in the language of the request. A text that a language lacks is given in English.
/// </summary>
/// <param name="section">The section's name in the files.</param>
internal sealed class Words(string section)
{
    private static readonly FrozenDictionary<string, FrozenDictionary<string, string>> s_languages = Languages.All.ToFrozenDictionary(
        language => language.Code, language => Load(language.Code), StringComparer.Ordinal);

    /// <summary>Every text of a language, by section and key with a dot between.</summary>
    public static FrozenDictionary<string, string> Of(string language) => s_languages[language];

    /// <summary>A text; without a key the one that is called as the member that asks.</summary>
    public string Text([CallerMemberName] string key = "") => Find($"{section}.{key}");

    /// <summary>Whether there is a text of a key.</summary>
    public bool Has(string key) => s_languages[Languages.Default].ContainsKey($"{section}.{key}");

    /// <summary>A text with figures and names in its places {0}, {1} and so on.</summary>
    public string With(ReadOnlySpan<object?> values, [CallerMemberName] string key = "") =>
        string.Format(CultureInfo.CurrentCulture, Find($"{section}.{key}"), values);

    /// <summary>A text that differs by number: <c>key.one</c> for one, <c>key.other</c> for all others; {0} is the number.</summary>
    public string Count(long count, [CallerMemberName] string key = "") => With([count], $"{key}.{(count == 1 ? "one" : "other")}");

    /// <summary>
    /// Says in the language of the request what the farm's rules say in English: each sentence of the section "Rules" that is
    /// found is put in its own words, and what has none stays as it is.
    /// </summary>
    public static string Rule(string english)
    {
        if (Languages.Current == Languages.Default)
            return english;
        foreach (var (key, own) in s_rules[Languages.Current])
            english = english.Replace(key, own, StringComparison.Ordinal);
        return english;
    }

    private static readonly FrozenDictionary<string, (string English, string Own)[]> s_rules = Languages.All.ToFrozenDictionary(
        language => language.Code,
        language => s_languages[language.Code].Where(text => text.Key.StartsWith("Rules.", StringComparison.Ordinal))
            .Select(text => (s_languages[Languages.Default][text.Key], text.Value)).OrderByDescending(pair => pair.Item1.Length).ToArray(),
        StringComparer.Ordinal);

    private static string Find(string key) =>
        s_languages[Languages.Current].TryGetValue(key, out var own) ? own
        : s_languages[Languages.Default].TryGetValue(key, out var english) ? english
        : throw new KeyNotFoundException($"Texts/{Languages.Default}.json has no text '{key}'.");

    private static FrozenDictionary<string, string> Load(string language)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"texts/{language}.json")
            ?? throw new InvalidOperationException($"The texts of language '{language}' are missing: Texts/{language}.json.");
        var sections = JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, string>>>(stream)!;
        return sections.SelectMany(part => part.Value.Select(text => KeyValuePair.Create($"{part.Key}.{text.Key}", text.Value)))
            .ToFrozenDictionary(StringComparer.Ordinal);
    }
}
