using System.Collections.Immutable;

namespace GaitWatch;

/// <summary>The keys that mean something, and what an unknown one was probably meant to be.</summary>
internal static class SettingsKeys
{
    /// <summary>The section that holds them all.</summary>
    public const string Section = "GaitWatch";

    /// <summary>Every key below the section; <c>#</c> stands for a number in a list.</summary>
    public static ImmutableArray<string> Known { get; } =
    [
        "Farm", "TimeZone", "DataDirectory", "SecretsDirectory",
        "Mqtt:Embedded", "Mqtt:Host", "Mqtt:Port", "Mqtt:Username", "Mqtt:Password", "Mqtt:Tls",
        "Http:Urls", "Http:ShareUrls", "Http:ShareAddress", "Http:Certificate", "Http:CertificateKey",
        "Database", "Influx:Url", "Influx:Token", "Influx:Org", "Influx:Bucket",
        "FalseAlertsPer100CowsPerWeek", "TagWindowSeconds", "FrameRetentionDays", "NextVisitWithinDays",
        "LightestCowKg", "HeaviestCowKg", "WeightTolerancePercent",
        "Platforms:#:Id", "Platforms:#:Kind", "Platforms:#:PlateLengthMetres", "Platforms:#:SampleRateHz",
        "Platforms:#:AccuracyClass", "Platforms:#:VerificationIntervalKg",
        "Platforms:#:Cells:#:Id", "Platforms:#:Cells:#:Plate", "Platforms:#:Cells:#:X",
    ];

    /// <summary>A sentence for each key of the section that means nothing, naming the nearest one that does.</summary>
    public static IEnumerable<string> Unknown(IConfiguration configuration)
    {
        foreach (var (key, value) in configuration.GetSection(Section).AsEnumerable(makePathsRelative: true))
        {
            if (value is null || key.Length == 0)
                continue;
            var pattern = Pattern(key);
            if (Known.Contains(pattern, StringComparer.OrdinalIgnoreCase))
                continue;
            var nearest = Known.MinBy(known => Distance(known.ToUpperInvariant(), pattern.ToUpperInvariant()))!;
            yield return $"{Section}:{key} means nothing here and is ignored; did you mean {Section}:{InPlaceOf(nearest, key)}?";
        }
    }

    private static string Pattern(string key) => string.Join(':', key.Split(':').Select(part => part.All(char.IsAsciiDigit) ? "#" : part));

    // The nearest key, with the numbers that were given put where it has a number.
    private static string InPlaceOf(string nearest, string key)
    {
        var numbers = new Queue<string>(key.Split(':').Where(part => part.All(char.IsAsciiDigit)));
        return string.Join(':', nearest.Split(':').Select(part => part == "#" ? (numbers.TryDequeue(out var number) ? number : "0") : part));
    }

    // Levenshtein's distance: how many letters to add, drop or change.
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(above, row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[b.Length];
    }
}
