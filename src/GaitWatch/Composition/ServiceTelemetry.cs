using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;

namespace GaitWatch;

/// <summary>What the service tells of itself, at <c>/metrics</c>.</summary>
internal static class ServiceTelemetry
{
    /// <summary>Collects GaitWatch's own meters, the web server's and the runtime's.</summary>
    public static void AddServiceTelemetry(this IServiceCollection services) =>
        services.AddOpenTelemetry().ConfigureResource(resource => resource.AddService("gaitwatch")).WithMetrics(metrics => metrics
            .AddMeter("GaitWatch.*", "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime")
            .AddPrometheusExporter());

    /// <summary>Shows them.</summary>
    public static void MapServiceTelemetry(this WebApplication app) => app.MapPrometheusScrapingEndpoint("/metrics");
}
