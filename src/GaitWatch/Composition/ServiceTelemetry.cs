using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace GaitWatch;

/// <summary>What the service tells of itself: figures at <c>/metrics</c> and, where a collector is named, traces.</summary>
internal static class ServiceTelemetry
{
    // OpenTelemetry's own name for where a collector listens; its other variables hold too.
    private const string Collector = "OTEL_EXPORTER_OTLP_ENDPOINT";

    /// <summary>Collects GaitWatch's own meters, the web server's and the runtime's; traces only with a collector.</summary>
    public static void AddServiceTelemetry(this IServiceCollection services, IConfiguration configuration)
    {
        var telemetry = services.AddOpenTelemetry().ConfigureResource(resource => resource.AddService("gaitwatch")).WithMetrics(metrics => metrics
            // Their standard names end in what Prometheus keeps for histograms, and nobody in a barn asks how many timers there are.
            .AddView("dotnet.assembly.count", MetricStreamConfiguration.Drop)
            .AddView("dotnet.process.cpu.count", MetricStreamConfiguration.Drop)
            .AddView("dotnet.timer.count", MetricStreamConfiguration.Drop)
            .AddMeter("GaitWatch.*", "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime")
            .AddPrometheusExporter());
        if (!string.IsNullOrWhiteSpace(configuration[Collector]))
            telemetry.WithTracing(traces => traces.AddSource("GaitWatch.*", "Microsoft.AspNetCore", "System.Net.Http").AddOtlpExporter());
    }

    /// <summary>Shows the figures, in Prometheus' text or as OpenMetrics, whichever is asked for.</summary>
    public static void MapServiceTelemetry(this WebApplication app) => app.MapPrometheusScrapingEndpoint("/metrics");
}
