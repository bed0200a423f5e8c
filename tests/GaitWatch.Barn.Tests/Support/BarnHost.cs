using System.Collections.Concurrent;
using GaitWatch.Store;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn.Tests;

/// <summary>The barn side in a host, as the service runs it.</summary>
internal sealed class BarnHost : IAsyncDisposable
{
    private readonly IHost _host;

    private BarnHost(IHost host, BarnStore store, ConcurrentQueue<string> log)
    {
        _host = host;
        Store = store;
        Log = log;
    }

    public BarnStore Store { get; }

    /// <summary>What was logged: id and sentence.</summary>
    public ConcurrentQueue<string> Log { get; }

    public IServiceProvider Services => _host.Services;

    public static async Task<BarnHost> StartAsync(BarnStore store, BarnOptions options, Action<IServiceCollection>? change = null)
    {
        var log = new ConcurrentQueue<string>();
        var builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings());
        builder.Logging.AddProvider(new Collector(log));
        builder.Services.AddSingleton(store);
        builder.Services.AddBarn(options);
        change?.Invoke(builder.Services);
        var host = builder.Build();
        await host.StartAsync();
        return new BarnHost(host, store, log);
    }

    public Task StopAsync() => _host.StopAsync();

    public async ValueTask DisposeAsync()
    {
        await _host.StopAsync();
        if (_host is IAsyncDisposable disposable)
            await disposable.DisposeAsync();
    }

    private sealed class Collector(ConcurrentQueue<string> log) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;

        public void Dispose()
        {
        }

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            log.Enqueue($"{eventId.Id} {formatter(state, exception)} {exception}");
    }
}
