using System.Collections.Immutable;

namespace GaitWatch;

/// <summary>Reads where the series go: all four keys, or none and there is no export.</summary>
internal static class InfluxSettingsReader
{
    private static readonly (string Key, string Right)[] s_keys =
    [
        ("Influx:Url", "the address of InfluxDB 2, such as 'http://127.0.0.1:8086'; leave out all of GaitWatch:Influx for no export."),
        ("Influx:Token", "a token of InfluxDB that may write to the bucket and delete from it; best as a file (GaitWatch__Influx__Token in GaitWatch:SecretsDirectory)."),
        ("Influx:Org", "the name of InfluxDB's organization."),
        ("Influx:Bucket", "the name of InfluxDB's bucket, such as 'gaitwatch'."),
    ];

    /// <summary>Reads the keys under <c>Influx</c>.</summary>
    /// <returns>Null when none is set, or one is at fault.</returns>
    public static InfluxSettings? Read(SettingValues values, ImmutableArray<string>.Builder notices)
    {
        var texts = s_keys.Select(key => values.Text(key.Key)).ToArray();
        if (texts.All(text => text is null))
            return null;
        foreach (var (key, right) in s_keys.Where((_, i) => texts[i] is null))
            values.Fault(key, null, right);
        if (texts[0] is not { } address)
            return null;
        if (!Uri.TryCreate(address, UriKind.Absolute, out var url) || (url.Scheme != Uri.UriSchemeHttp && url.Scheme != Uri.UriSchemeHttps) || url.Query.Length > 0)
        {
            values.Fault("Influx:Url", address, s_keys[0].Right);
            return null;
        }

        if (url.Scheme == Uri.UriSchemeHttp && !SettingsReader.IsLoopback(url.Host) && url.Host.Contains('.', StringComparison.Ordinal))
            notices.Add($"GaitWatch:Influx:Url is '{address}': the token crosses the network in the clear; use https, or keep that network inside the farm.");
        return texts.Any(text => text is null) ? null : new InfluxSettings { Url = url, Token = texts[1]!, Org = texts[2]!, Bucket = texts[3]! };
    }
}
