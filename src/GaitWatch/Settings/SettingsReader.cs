using System.Collections.Immutable;
using System.Globalization;
using System.Net;

namespace GaitWatch;

/// <summary>Reads the settings and checks them all before anything connects. Touches files it is told of, never the network.</summary>
internal static class SettingsReader
{
    /// <summary>Reads every setting.</summary>
    /// <param name="configuration">Where they come from.</param>
    /// <param name="machineZone">The time zone when none is set.</param>
    /// <param name="folder">What relative paths start from.</param>
    public static SettingsResult Read(IConfiguration configuration, TimeZoneInfo machineZone, string folder)
    {
        var values = new SettingValues(configuration);
        var notices = SettingsKeys.Unknown(configuration).ToImmutableArray().ToBuilder();
        var lightest = values.Number("LightestCowKg", 250, 50, 1000, "the least a cow weighs, kg");
        var settings = new GaitWatchSettings
        {
            Farm = Farm(values),
            TimeZone = Zone(values, machineZone),
            DataDirectory = DataDirectory(values, folder),
            Mqtt = Mqtt(values, notices),
            Http = HttpSettingsReader.Read(values, notices, folder),
            Influx = InfluxSettingsReader.Read(values, notices),
            FalseAlertsPer100CowsPerWeek = Budget(values),
            TagWindow = TimeSpan.FromSeconds(values.Number("TagWindowSeconds", 10, 0.1, 120, "how long before first contact a tag may be read, seconds")),
            FrameRetentionDays = values.Whole("FrameRetentionDays", 30, 1, 3650, "how long raw frames are kept, days"),
            NextVisitWithinDays = values.Whole("NextVisitWithinDays", 7, 0, 60, "how near a visit must be for an alert to wait for it, days"),
            LightestCowKg = lightest,
            HeaviestCowKg = values.Number("HeaviestCowKg", 1100, Math.Max(300, lightest + 50), 3000, "the most a cow weighs, kg"),
            WeightTolerancePercent = values.Number("WeightTolerancePercent", 15, 1, 50, "how far a weight may lie from her own recent one, per cent"),
            Platforms = PlatformSettingsReader.Read(values),
        };
        NotYet(values);
        var faults = values.Faults;
        return new SettingsResult(faults.IsEmpty ? settings : null, faults, notices.ToImmutable());
    }

    private static string Farm(SettingValues values)
    {
        var farm = values.Text("Farm") ?? "home";
        if (farm.AsSpan().ContainsAny("/+# ") || farm.Any(char.IsControl) || farm.StartsWith('$'))
            values.Fault("Farm", farm, "the farm is a topic level, so without '/', '+', '#', spaces and a leading '$', such as 'home'.");
        return farm;
    }

    private static TimeZoneInfo Zone(SettingValues values, TimeZoneInfo machineZone)
    {
        if (values.Text("TimeZone") is not { } name)
            return machineZone;
        if (TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone) && zone.HasIanaId)
            return zone;
        var right = TimeZoneInfo.TryConvertWindowsIdToIanaId(name, out var iana)
            ? $"a name of the IANA time zone database; for this one '{iana}'."
            : "a name of the IANA time zone database, such as 'Europe/Dublin'; leave it out for the machine's own.";
        values.Fault("TimeZone", name, right);
        return machineZone;
    }

    private static string DataDirectory(SettingValues values, string folder)
    {
        var directory = values.Text("DataDirectory") ?? "./data";
        try
        {
            var full = Path.GetFullPath(directory, folder);
            if (File.Exists(full))
                values.Fault("DataDirectory", directory, "a folder; a file of that name is there.");
            return full;
        }
        catch (ArgumentException)
        {
            values.Fault("DataDirectory", directory, "the path of a folder, such as './data'.");
            return folder;
        }
    }

    private static double Budget(SettingValues values)
    {
        var budget = values.Number("FalseAlertsPer100CowsPerWeek", 1.0, "false flags a week per 100 cows");
        if (budget is <= 0 or > 100)
        {
            values.Fault(
                "FalseAlertsPer100CowsPerWeek", budget.ToString(CultureInfo.InvariantCulture),
                "more than 0, at most 100: how many false flags a week per 100 cows you will put up with; 1 is usual. No detection works with none.");
        }

        return budget;
    }

    private static MqttSettings Mqtt(SettingValues values, ImmutableArray<string>.Builder notices)
    {
        var settings = new MqttSettings
        {
            Embedded = values.YesOrNo("Mqtt:Embedded", true),
            Host = values.Text("Mqtt:Host") ?? "127.0.0.1",
            Port = values.Whole("Mqtt:Port", 1883, 1, 65535, "a TCP port"),
            Username = values.Text("Mqtt:Username"),
            Password = values.Text("Mqtt:Password"),
            Tls = values.YesOrNo("Mqtt:Tls", false),
        };
        if (settings.Embedded && settings.Host != "localhost" && !IPAddress.TryParse(settings.Host, out _))
            values.Fault("Mqtt:Host", settings.Host, "with the embedded broker the address of this machine it listens at, such as 127.0.0.1, or 0.0.0.0 for every address.");
        else if (Uri.CheckHostName(settings.Host) == UriHostNameType.Unknown)
            values.Fault("Mqtt:Host", settings.Host, "a host name or address, without a scheme or port, such as 'broker.farm'.");
        if (settings.Embedded && settings.Tls)
            values.Fault("Mqtt:Tls", "true", "the embedded broker speaks plain MQTT; for TLS set GaitWatch:Mqtt:Embedded to false and connect to a broker that has a certificate.");
        if (settings.Password is not null && settings.Username is null)
            values.Fault("Mqtt:Username", null, "a user name goes with GaitWatch:Mqtt:Password.");
        if (settings is { Embedded: true, Username: null } && !IsLoopback(settings.Host))
            notices.Add($"GaitWatch:Mqtt:Host is '{settings.Host}': anyone who reaches this machine can send readings; set GaitWatch:Mqtt:Username and Password, and keep the network to the barn.");
        return settings;
    }

    // What the contract has a key for and this version does not do yet is refused: a setting that is silently without effect would be a lie.
    private static void NotYet(SettingValues values)
    {
        if (values.Text("Database") is { } database && !database.Equals("embedded", StringComparison.OrdinalIgnoreCase))
            values.Fault("Database", "(set)", "this version keeps everything in the embedded store; leave it out.");
    }

    /// <summary>Whether only this machine reaches an address.</summary>
    internal static bool IsLoopback(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
