using System.Collections.Immutable;
using GaitWatch.Gait;
using Microsoft.Extensions.Configuration;

namespace GaitWatch.Tests;

/// <summary>What the settings say when nothing is set, and what each refusal says.</summary>
public sealed class SettingsReaderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Nothing_set_gives_the_contracts_defaults()
    {
        // Contract section 5, table of settings.
        var settings = Read().Settings!;
        Assert.Equal("home", settings.Farm);
        Assert.Equal("Europe/Dublin", settings.TimeZone.Id);
        Assert.Equal(Path.Combine(_folder.Path, "data"), settings.DataDirectory);
        Assert.Equal(new MqttSettings { Embedded = true, Host = "127.0.0.1", Port = 1883, Tls = false }, settings.Mqtt);
        Assert.Equal(["http://127.0.0.1:8080"], settings.Http.Urls.AsEnumerable());
        Assert.Equal(1.0, settings.FalseAlertsPer100CowsPerWeek);
        Assert.Equal(TimeSpan.FromSeconds(10), settings.TagWindow);
        Assert.Equal(30, settings.FrameRetentionDays);
        Assert.Equal(7, settings.NextVisitWithinDays);
        Assert.Equal((250, 1100, 15), (settings.LightestCowKg, settings.HeaviestCowKg, settings.WeightTolerancePercent));
        var platform = Assert.Single(settings.Platforms);
        Assert.Equal(("parlour-exit", 2.4, 200), (platform.Id, platform.PlateLengthMetres, platform.SampleRateHz));
        Assert.Equal([("l0", 0.0), ("l1", 2.4), ("r0", 0.0), ("r1", 2.4)], platform.Cells.Select(cell => (cell.Id, cell.X)));
    }

    [Fact]
    public void The_file_beside_the_program_sets_nothing_but_the_defaults()
    {
        var shipped = new ConfigurationBuilder().AddJsonFile(Path.Combine(AppContext.BaseDirectory, SettingsSource.FileName)).Build();
        var result = SettingsReader.Read(shipped, Zone, _folder.Path);
        Assert.Empty(result.Faults);
        Assert.Empty(result.Notices);
        var (sample, none) = (result.Settings!, Read().Settings!);
        Assert.Equal([TwinPlate.Default], sample.Platforms.AsEnumerable());
        Assert.Equal(none.Http.Urls.AsEnumerable(), sample.Http.Urls.AsEnumerable());
        Assert.Equal(none with { Http = sample.Http, Platforms = sample.Platforms }, sample);
    }

    [Fact]
    public void Every_key_of_the_contract_is_known()
    {
        // Contract section 5, first column; the keys of a platform from section 1.
        string[] contract =
        [
            "Farm", "TimeZone", "DataDirectory", "Mqtt:Embedded", "Mqtt:Host", "Mqtt:Port", "Mqtt:Username", "Mqtt:Password", "Mqtt:Tls",
            "Http:Urls", "Http:Certificate", "Http:CertificateKey", "Database", "Influx:Url", "Influx:Token", "Influx:Org", "Influx:Bucket",
            "FalseAlertsPer100CowsPerWeek", "TagWindowSeconds", "FrameRetentionDays", "NextVisitWithinDays", "Platforms:#:Id",
            "Platforms:#:Kind", "Platforms:#:PlateLengthMetres", "Platforms:#:SampleRateHz", "Platforms:#:Cells:#:Id",
            "Platforms:#:Cells:#:Plate", "Platforms:#:Cells:#:X", "Platforms:#:AccuracyClass", "Platforms:#:VerificationIntervalKg",
        ];
        Assert.Empty(contract.Except(SettingsKeys.Known));
    }

    [Fact]
    public void Where_the_series_go_is_read_whole_or_not_at_all()
    {
        Assert.Null(Read().Settings!.Influx);
        var result = Read(("Influx:Url", "http://influx.farm:8086"), ("Influx:Token", "t"), ("Influx:Org", "farm"), ("Influx:Bucket", "gaitwatch"));
        Assert.Equal(new InfluxSettings { Url = new Uri("http://influx.farm:8086"), Token = "t", Org = "farm", Bucket = "gaitwatch" }, result.Settings!.Influx);
        Assert.Contains("the token crosses the network in the clear", Assert.Single(result.Notices), StringComparison.Ordinal);
    }

    [Fact]
    public void A_platform_is_read_whole()
    {
        var result = Read(
            ("Platforms:0:id", "lane"), ("Platforms:0:kind", "twin-plate"), ("Platforms:0:plateLengthMetres", "3.0"), ("Platforms:0:sampleRateHz", "100"),
            ("Platforms:0:cells:0:id", "a"), ("Platforms:0:cells:0:plate", "left"), ("Platforms:0:cells:0:x", "0.1"),
            ("Platforms:0:cells:1:id", "b"), ("Platforms:0:cells:1:plate", "left"), ("Platforms:0:cells:1:x", "2.9"),
            ("Platforms:0:cells:2:id", "c"), ("Platforms:0:cells:2:plate", "right"), ("Platforms:0:cells:2:x", "0.1"),
            ("Platforms:0:cells:3:id", "d"), ("Platforms:0:cells:3:plate", "Right"), ("Platforms:0:cells:3:x", "2.9"),
            ("Platforms:0:accuracyClass", "IIII"), ("Platforms:0:verificationIntervalKg", "1"));
        Assert.Empty(result.Faults);
        var platform = Assert.Single(result.Settings!.Platforms);
        Assert.Equal(("lane", 3.0, 100.0, "IIII", 1.0), (platform.Id, platform.PlateLengthMetres, platform.SampleRateHz, platform.AccuracyClass, platform.VerificationIntervalKg));
        ImmutableArray<LoadCell> cells =
            [new("a", PlateSide.Left, 0.1), new("b", PlateSide.Left, 2.9), new("c", PlateSide.Right, 0.1), new("d", PlateSide.Right, 2.9)];
        Assert.Equal(cells.AsEnumerable(), platform.Cells.AsEnumerable());
    }

    [Fact]
    public void All_faults_are_told_at_once()
    {
        var result = Read(("Farm", "my/farm"), ("Mqtt:Port", "70000"), ("TimeZone", "Mars/Olympus"), ("FalseAlertsPer100CowsPerWeek", "0"));
        Assert.Null(result.Settings);
        Assert.Equal(
            ["GaitWatch:Farm", "GaitWatch:TimeZone", "GaitWatch:Mqtt:Port", "GaitWatch:FalseAlertsPer100CowsPerWeek"],
            result.Faults.Select(fault => fault.Key));
    }

    [Theory]
    [InlineData("Farm", "my farm", "GaitWatch:Farm is 'my farm': the farm is a topic level, so without '/', '+', '#', spaces and a leading '$', such as 'home'.")]
    [InlineData("TimeZone", "Mars/Olympus", "GaitWatch:TimeZone is 'Mars/Olympus': a name of the IANA time zone database, such as 'Europe/Dublin'; leave it out for the machine's own.")]
    [InlineData("TimeZone", "W. Europe Standard Time", "GaitWatch:TimeZone is 'W. Europe Standard Time': a name of the IANA time zone database; for this one 'Europe/Berlin'.")]
    [InlineData("Mqtt:Port", "70000", "GaitWatch:Mqtt:Port is '70000': a TCP port, a whole number from 1 to 65535.")]
    [InlineData("Mqtt:Port", "mqtt", "GaitWatch:Mqtt:Port is 'mqtt': a TCP port, a whole number from 1 to 65535.")]
    [InlineData("Mqtt:Embedded", "ja", "GaitWatch:Mqtt:Embedded is 'ja': true or false.")]
    [InlineData("Mqtt:Host", "broker.farm", "GaitWatch:Mqtt:Host is 'broker.farm': with the embedded broker the address of this machine it listens at, such as 127.0.0.1, or 0.0.0.0 for every address.")]
    [InlineData("Mqtt:Tls", "true", "GaitWatch:Mqtt:Tls is 'true': the embedded broker speaks plain MQTT; for TLS set GaitWatch:Mqtt:Embedded to false and connect to a broker that has a certificate.")]
    [InlineData("Mqtt:Password", "secret", "GaitWatch:Mqtt:Username is missing: a user name goes with GaitWatch:Mqtt:Password.")]
    [InlineData("Http:Urls", "8080", "GaitWatch:Http:Urls is '8080': addresses such as 'http://127.0.0.1:8080', several with ';' between them; http or https, no path, a port from 1 to 65535.")]
    [InlineData("Http:Urls", "ftp://127.0.0.1:21", "GaitWatch:Http:Urls is 'ftp://127.0.0.1:21': addresses such as 'http://127.0.0.1:8080', several with ';' between them; http or https, no path, a port from 1 to 65535.")]
    [InlineData("Http:Urls", "https://127.0.0.1:8443", "GaitWatch:Http:Certificate is missing: an https address in GaitWatch:Http:Urls or ShareUrls needs the PEM file of a certificate.")]
    [InlineData("Http:Certificate", "gone.pem", "GaitWatch:Http:Certificate is 'gone.pem': a PEM file that this program may read (there is none).")]
    [InlineData("FalseAlertsPer100CowsPerWeek", "0", "GaitWatch:FalseAlertsPer100CowsPerWeek is '0': more than 0, at most 100: how many false flags a week per 100 cows you will put up with; 1 is usual. No detection works with none.")]
    [InlineData("FalseAlertsPer100CowsPerWeek", "1,5", "GaitWatch:FalseAlertsPer100CowsPerWeek is '1,5': false flags a week per 100 cows, a number such as 1.")]
    [InlineData("TagWindowSeconds", "-1", "GaitWatch:TagWindowSeconds is '-1': how long before first contact a tag may be read, seconds, a number from 0.1 to 120 such as 10.")]
    [InlineData("FrameRetentionDays", "0", "GaitWatch:FrameRetentionDays is '0': how long raw frames are kept, days, a whole number from 1 to 3650.")]
    [InlineData("HeaviestCowKg", "NaN", "GaitWatch:HeaviestCowKg is 'NaN': the most a cow weighs, kg, a number from 300 to 3000 such as 1100.")]
    [InlineData("Platforms:0:Kind", "walk-over", "GaitWatch:Platforms:0:Kind is 'walk-over': 'twin-plate', the one kind of platform there is.")]
    [InlineData("Database", "Host=db", "GaitWatch:Database is '(set)': this version keeps everything in the embedded store; leave it out.")]
    [InlineData("Influx:Url", "influx:8086", "GaitWatch:Influx:Url is 'influx:8086': the address of InfluxDB 2, such as 'http://127.0.0.1:8086'; leave out all of GaitWatch:Influx for no export.")]
    [InlineData("Influx:Url", "http://influx:8086", "GaitWatch:Influx:Bucket is missing: the name of InfluxDB's bucket, such as 'gaitwatch'.")]
    [InlineData("Influx:Bucket", "gaitwatch", "GaitWatch:Influx:Url is missing: the address of InfluxDB 2, such as 'http://127.0.0.1:8086'; leave out all of GaitWatch:Influx for no export.")]
    public void A_bad_value_is_refused_in_words(string key, string value, string sentence) =>
        Assert.Contains(sentence, Read((key, value)).Faults.Select(fault => fault.ToString()));

    [Fact]
    public void A_platform_that_cannot_be_used_is_refused_with_its_own_words()
    {
        var faults = Read(("Platforms:0:Id", "lane"), ("Platforms:0:PlateLengthMetres", "9"), ("Platforms:0:Cells:0:Id", "a"), ("Platforms:0:Cells:0:Plate", "up")).Faults.Select(fault => fault.ToString()).ToArray();
        Assert.Contains("GaitWatch:Platforms:0:Cells:0:Plate is 'up': 'left' or 'right', as the cow walks.", faults);
        Assert.Contains("GaitWatch:Platforms:0:Cells:0:X is missing: where the cell stands, metres from the entry edge.", faults);
        Assert.Contains("GaitWatch:Platforms:0 is 'lane': plateLengthMetres is 9: 1.8 to 6 metres can be analysed.", faults);
        Assert.Contains(faults, fault => fault.StartsWith("GaitWatch:Platforms:0 is 'lane': cells has 0 on the right plate", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_platforms_of_one_name_are_refused() =>
        Assert.Contains(
            "GaitWatch:Platforms:1:Id is 'lane': each platform has an id of its own.",
            Read(("Platforms:0:Id", "lane"), ("Platforms:1:Id", "lane")).Faults.Select(fault => fault.ToString()));

    [Theory]
    [InlineData("Mqtt:Prot", "1", "GaitWatch:Mqtt:Prot means nothing here and is ignored; did you mean GaitWatch:Mqtt:Port?")]
    [InlineData("Timezone2", "x", "GaitWatch:Timezone2 means nothing here and is ignored; did you mean GaitWatch:TimeZone?")]
    [InlineData("Platforms:1:PlateLength", "2.4", "GaitWatch:Platforms:1:PlateLength means nothing here and is ignored; did you mean GaitWatch:Platforms:1:PlateLengthMetres?")]
    public void An_unknown_key_is_told_with_the_nearest_known_one(string key, string value, string notice) =>
        Assert.Contains(notice, Read((key, value)).Notices);

    [Fact]
    public void Keys_are_known_in_any_case() => Assert.Empty(Read(("mqtt:PORT", "1884")).Notices);

    [Fact]
    public void A_wall_open_to_the_network_is_told()
    {
        var notices = Read(("Mqtt:Host", "0.0.0.0"), ("Http:Urls", "http://*:8080")).Notices;
        Assert.Contains(notices, notice => notice.StartsWith("GaitWatch:Mqtt:Host is '0.0.0.0': anyone who reaches this machine can send readings", StringComparison.Ordinal));
        Assert.Contains(notices, notice => notice.StartsWith("GaitWatch:Http:Urls has 'http://*:8080': anyone on that network", StringComparison.Ordinal));
    }

    [Fact]
    public void A_certificate_that_is_none_is_refused_and_a_good_pair_taken()
    {
        File.WriteAllText(Path.Combine(_folder.Path, "bad.pem"), "no certificate");
        Assert.Contains(
            Read(("Http:Urls", "https://127.0.0.1:8443"), ("Http:Certificate", "bad.pem")).Faults,
            fault => fault.Key == "GaitWatch:Http:Certificate" && fault.Right.StartsWith("the certificate and its private key in PEM form", StringComparison.Ordinal));

        TestCertificate.Write(_folder.Path, "own.pem", "own.key", DateTimeOffset.UtcNow.AddDays(30));
        var good = Read(("Http:Urls", "https://127.0.0.1:8443"), ("Http:Certificate", "own.pem"), ("Http:CertificateKey", "own.key"));
        Assert.Empty(good.Faults);
        Assert.Equal(Path.Combine(_folder.Path, "own.pem"), good.Settings!.Http.Certificate);
    }

    [Fact]
    public void The_data_folder_may_not_be_a_file()
    {
        File.WriteAllText(Path.Combine(_folder.Path, "data"), "");
        Assert.Contains("GaitWatch:DataDirectory is './data': a folder; a file of that name is there.", Read().Faults.Select(fault => fault.ToString()));
    }

    private static TimeZoneInfo Zone { get; } = TimeZoneInfo.FindSystemTimeZoneById("Europe/Dublin");

    private SettingsResult Read(params (string Key, string Value)[] set)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(set.ToDictionary(one => $"GaitWatch:{one.Key}", one => (string?)one.Value))
            .Build();
        return SettingsReader.Read(configuration, Zone, _folder.Path);
    }
}
