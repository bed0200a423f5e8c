using GaitWatch.Barn;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using GaitWatch.Web;

namespace GaitWatch;

/// <summary>The settings in the words of each project.</summary>
internal static class Translation
{
    /// <summary>For the store.</summary>
    public static StoreOptions Store(GaitWatchSettings settings) => new()
    {
        DataDirectory = settings.DataDirectory,
        Calendar = new FarmCalendar(settings.TimeZone),
        Platforms = settings.Platforms,
        Farm = settings.Farm,
        NextVisitWithinDays = settings.NextVisitWithinDays,
        ExportSeries = settings.Influx is not null,
    };

    /// <summary>For the export to InfluxDB.</summary>
    public static InfluxOptions Influx(InfluxSettings settings) => new()
    {
        Url = settings.Url,
        Token = settings.Token,
        Org = settings.Org,
        Bucket = settings.Bucket,
    };

    /// <summary>For the analysis of crossings.</summary>
    public static GaitOptions Gait(GaitWatchSettings settings) => new()
    {
        LightestCowKg = settings.LightestCowKg,
        HeaviestCowKg = settings.HeaviestCowKg,
        TagWindow = settings.TagWindow,
    };

    /// <summary>For detection.</summary>
    public static LamenessOptions Lameness(GaitWatchSettings settings) => new()
    {
        FalseAlertsPer100CowsPerWeek = settings.FalseAlertsPer100CowsPerWeek,
        TimeZone = settings.TimeZone,
        WeightTolerance = settings.WeightTolerancePercent / 100,
    };

    /// <summary>For messages and their analysis.</summary>
    public static BarnOptions Barn(GaitWatchSettings settings) => new()
    {
        Farm = settings.Farm,
        Platforms = settings.Platforms,
        Calendar = new FarmCalendar(settings.TimeZone),
        Gait = Gait(settings),
        Lameness = Lameness(settings),
        FrameRetentionDays = settings.FrameRetentionDays,
        Mqtt = new MqttOptions
        {
            Embedded = settings.Mqtt.Embedded,
            Host = settings.Mqtt.Host,
            Port = settings.Mqtt.Port,
            Username = settings.Mqtt.Username,
            Password = settings.Mqtt.Password,
            Tls = settings.Mqtt.Tls,
        },
    };

    /// <summary>For the API and the pages.</summary>
    public static WebOptions Web(GaitWatchSettings settings) => new()
    {
        FalseAlertsPer100CowsPerWeek = settings.FalseAlertsPer100CowsPerWeek,
        Gait = Gait(settings),
        ShareEndpoints = [.. settings.Http.ShareUrls.Select(BindingAddress.Parse).Select(address => new ShareEndpoint(address.Scheme, address.Port)).Distinct()],
        ShareAddress = settings.Http.ShareAddress,
    };
}
