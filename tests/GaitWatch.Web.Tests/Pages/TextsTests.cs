using System.Text.RegularExpressions;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>The files of texts: whole in every language, and nothing in them that no page says.</summary>
public sealed partial class TextsTests
{
    public static TheoryData<string> Translations => [.. Languages.All.Select(language => language.Code).Where(code => code != Languages.Default)];

    [Theory]
    [MemberData(nameof(Translations))]
    public void A_translation_has_every_text_and_no_other_each_with_the_same_places_for_figures(string language)
    {
        var english = Words.Of(Languages.Default);
        var own = Words.Of(language);
        Assert.Empty(english.Keys.Except(own.Keys));
        Assert.Empty(own.Keys.Except(english.Keys));
        Assert.All(english, text => Assert.Equal(Places(text.Value), Places(own[text.Key])));
        Assert.All(own.Values, text => Assert.False(string.IsNullOrWhiteSpace(text)));
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void A_translation_says_what_the_farms_rules_say(string language)
    {
        string[] said =
        [
            .. Enum.GetValues<FollowUpCause>().Select(cause => cause.InWords()),
            .. Legs.All.SelectMany(leg => Enum.GetValues<AlertPattern>().Select(pattern => TrimListOrder.NoteFor(leg, pattern))).OfType<string>(),
        ];
        using var _ = new InLanguage(language);
        Assert.All(said, sentence => Assert.NotEqual(sentence, Words.Rule(sentence)));
        Assert.Equal("Nobody translated this.", Words.Rule("Nobody translated this."));
    }

    [Theory]
    [MemberData(nameof(Translations))]
    public void A_sentence_is_known_by_its_shape_and_said_in_other_words_with_its_names_and_figures(string language)
    {
        Assert.Equal(Sentences.All.Select(sentence => $"Sentence.{sentence.Key}").Order(StringComparer.Ordinal), Words.Of(language).Keys.Where(key => key.StartsWith("Sentence.", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        using var _ = new InLanguage(language);
        foreach (var (key, said) in Sentences.All)
        {
            var filled = Place().Replace(said, place => $"r{place.Value[1]}");
            var own = Place().Replace(Words.Of(language)[$"Sentence.{key}"], place => $"r{place.Value[1]}");
            // Alone, and after another.
            Assert.Equal(own, Sentences.InWords(filled));
            Assert.EndsWith(own, Sentences.InWords($"Nobody translated this. {filled}"), StringComparison.Ordinal);
        }

        Assert.StartsWith("Die leere Waage zeigt 7,2\u00A0kg", Sentences.InWords("The empty platform reads 7.2 kg other than a day before, 3 times what class III allows in service: look for mud or a stone under the plates, then check with a test weight."), StringComparison.Ordinal);
    }

    [Fact]
    public void No_text_is_left_that_no_page_says()
    {
        var sources = Sources().ToArray();
        Assert.NotEmpty(sources);
        // Named by what they are about: patterns and legs as they go over the wire.
        string[] byWireName = ["Alert.both-hind.", "Alert.both-fore.", .. Legs.All.Select(leg => $"Leg.{leg.WireName()}")];
        var keys = Words.Of(Languages.Default).Keys.Where(key => !key.StartsWith("Rules.", StringComparison.Ordinal) && !key.StartsWith("Sentence.", StringComparison.Ordinal));
        var unused = keys.Where(key => !byWireName.Any(name => key.StartsWith(name, StringComparison.Ordinal))).Where(key =>
        {
            var (section, name) = (key[..key.IndexOf('.')], key[(key.IndexOf('.') + 1)..]);
            var ofSection = sources.Where(source => source.Contains($"new(\"{section}\")", StringComparison.Ordinal));
            // A name is that of the member that asks, or stands there as a text, whole or as far as its last point.
            return !ofSection.Any(source => Regex.IsMatch(source, $@"\b{Regex.Escape(name.Split('.')[0])}\b") || source.Contains($"\"{name}\"", StringComparison.Ordinal));
        });
        Assert.Empty(unused);
    }

    private static string[] Places(string text) => [.. Place().Matches(text).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Sources()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "GaitWatch.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests run outside the repository.");
        return Directory.EnumerateFiles(Path.Combine(folder, "src", "GaitWatch.Web"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)).Select(File.ReadAllText);
    }

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Place();
}
