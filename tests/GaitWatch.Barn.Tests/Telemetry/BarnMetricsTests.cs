using System.Collections.Concurrent;
using System.Diagnostics.Metrics;

namespace GaitWatch.Barn.Tests.Telemetry;

public class BarnMetricsTests
{
    [Fact]
    public async Task What_comes_in_is_counted_by_what_became_of_it()
    {
        var counted = new ConcurrentDictionary<string, double>();
        await using var store = await TestStore.OpenAsync();
        var options = Some.Options with { Mqtt = new MqttOptions { Port = FreePort.Find() } };
        await using var barn = await BarnHost.StartAsync(store.Store, options);
        var metrics = (BarnMetrics)barn.Services.GetService(typeof(BarnMetrics))!;
        using var listener = new MeterListener();
        // Other tests measure with meters of their own at the same time.
        listener.InstrumentPublished = (instrument, listening) =>
        {
            if (metrics.Owns(instrument))
                listening.EnableMeasurementEvents(instrument);
        };
        listener.SetMeasurementEventCallback<long>((instrument, value, _, _) => counted.AddOrUpdate(instrument.Name, value, (_, sum) => sum + value));
        listener.SetMeasurementEventCallback<double>((instrument, _, _, _) => counted.AddOrUpdate(instrument.Name, 1, (_, sum) => sum + 1));
        listener.Start();
        await using var device = await Device.ConnectAsync(options.Mqtt.Port);
        await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Some.PassageJson("px-1", Some.Now));
        await device.PublishAsync("gaitwatch/home/parlour-exit/passage", Some.PassageJson("px-1", Some.Now));
        await device.PublishAsync("gaitwatch/home/parlour-exit/passage", "{}");
        await store.Store.Progress.UntilFoldedAsync(store.Store.Progress.Appended);
        await Eventually.HoldsAsync("the change is measured", () => counted.ContainsKey("gaitwatch.fold.duration"));
        listener.RecordObservableInstruments();
        Assert.Equal(3, counted["gaitwatch.inputs.received"]);
        Assert.Equal(1, counted["gaitwatch.inputs.stored"]);
        Assert.Equal(1, counted["gaitwatch.inputs.duplicates"]);
        Assert.Equal(1, counted["gaitwatch.inputs.rejected"]);
        Assert.Equal(3, counted["gaitwatch.commit.duration"]);
        Assert.Equal(0, counted["gaitwatch.worker.lag"]);
    }
}
