using GaitWatch.Store;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;

namespace GaitWatch.Barn;

/// <summary>Adds the barn side to a host.</summary>
/// <remarks>
/// The reach of the river in this project, and its folders:
/// <code>
/// device ─▶ Broker (inside) or Client (outside) ─▶ Messages ─▶ Intake ─▶ [store's log] ─▶ Analysis ─▶ [store's state] ─▶ Publishing ─▶ broker
/// </code>
/// A message is acknowledged after Intake; everything behind the log can be repeated.
/// </remarks>
public static class BarnServices
{
    /// <summary>
    /// Adds intake, broker or client, analysis and publishing as hosted services. The host provides <see cref="BarnStore"/>
    /// and logging; <see cref="TimeProvider"/> is the system's unless given.
    /// </summary>
    public static IServiceCollection AddBarn(this IServiceCollection services, BarnOptions options)
    {
        services.AddAnalysis(options);
        services.AddSingleton<Intake>();
        services.AddSingleton<IInbox>(provider => new StoreInbox(provider.GetRequiredService<BarnStore>().Inputs));
        services.AddSingleton<Inlet>();
        services.AddHostedService<GroupCommit>();
        // Before the broker: the publisher listens for its first connection.
        services.AddHostedService<Publisher>();
        if (options.Mqtt.Embedded)
            services.AddLink<EmbeddedBroker>();
        else
            services.AddLink<ExternalBroker>();
        return services;
    }

    /// <summary>
    /// Adds the reading of messages and the analysis alone, without a broker: what is put into the store's log by other ways, such
    /// as a replay, is turned into state.
    /// </summary>
    public static IServiceCollection AddAnalysis(this IServiceCollection services, BarnOptions options)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(options);
        services.AddSingleton(provider => new BarnMetrics(provider.GetRequiredService<BarnStore>()));
        services.AddSingleton(provider => new MessageReader(options, () => provider.GetRequiredService<BarnStore>().Progress.FramesKeptFrom));
        services.AddSingleton<HerdWorker>();
        services.AddHostedService<HerdWorkerService>();
        services.AddHostedService<ServiceSeries>();
        return services;
    }

    private static void AddLink<T>(this IServiceCollection services) where T : class, IBrokerLink, IHostedService
    {
        services.AddSingleton<T>();
        services.AddSingleton<IBrokerLink>(provider => provider.GetRequiredService<T>());
        services.AddHostedService(provider => provider.GetRequiredService<T>());
    }
}
