using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using MQTTnet;
using MQTTnet.Protocol;

namespace GaitWatch.Simulator.Tests;

/// <summary>The program as it is run, against Debian's mosquitto.</summary>
public class ProgramTests
{
    [Fact]
    public async Task A_device_that_dies_leaves_its_last_will_without_a_time()
    {
        using var broker = await Mosquitto.StartAsync();
        using var statuses = await Statuses.ListenAsync(broker.Port);
        using var program = new Device(broker.Port);
        await statuses.UntilAsync(status => status.GetProperty("online").GetBoolean());
        await statuses.FramesAsync(3);
        program.Process.Kill();
        var will = await statuses.UntilAsync(status => !status.GetProperty("online").GetBoolean());
        Assert.False(will.TryGetProperty("t", out _));
    }

    [Fact]
    public async Task A_device_that_is_ended_says_goodbye_and_ends_with_0()
    {
        using var broker = await Mosquitto.StartAsync();
        using var statuses = await Statuses.ListenAsync(broker.Port);
        using var program = new Device(broker.Port);
        await statuses.UntilAsync(status => status.GetProperty("online").GetBoolean());
        await statuses.FramesAsync(3);
        using (var interrupt = Process.Start("kill", ["-INT", $"{program.Process.Id}"]))
            await interrupt.WaitForExitAsync();
        var goodbye = await statuses.UntilAsync(status => !status.GetProperty("online").GetBoolean());
        Assert.True(goodbye.TryGetProperty("t", out _));
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        await program.Process.WaitForExitAsync(patience.Token);
        Assert.Equal(0, program.Process.ExitCode);
    }

    /// <summary>The program as a process of its own, ended with the test.</summary>
    private sealed class Device : IDisposable
    {
        public Device(int port)
        {
            var program = Path.Combine(AppContext.BaseDirectory, "GaitWatch.Simulator.dll");
            Process = Process.Start(new ProcessStartInfo("dotnet", [program, "publish", "--port", $"{port}", "--days", "0", "--live", "--seconds-between", "5"])
            {
                RedirectStandardOutput = true, RedirectStandardError = true,
            })!;
            Process.BeginOutputReadLine();
            Process.BeginErrorReadLine();
        }

        public Process Process { get; }

        public void Dispose()
        {
            if (!Process.HasExited)
                Process.Kill();
            Process.Dispose();
        }
    }

    /// <summary>What a listener hears of the device.</summary>
    private sealed class Statuses : IDisposable
    {
        private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
        private readonly BlockingCollection<JsonElement> _heard = [];
        private readonly SemaphoreSlim _frames = new(0);

        public static async Task<Statuses> ListenAsync(int port)
        {
            var statuses = new Statuses();
            statuses._client.ApplicationMessageReceivedAsync += args =>
            {
                if (args.ApplicationMessage.Topic.EndsWith("/status", StringComparison.Ordinal))
                    statuses._heard.Add(JsonDocument.Parse(args.ApplicationMessage.ConvertPayloadToString()).RootElement);
                else if (args.ApplicationMessage.Topic.EndsWith("/frames", StringComparison.Ordinal))
                    statuses._frames.Release();
                return Task.CompletedTask;
            };
            await statuses._client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).Build());
            await statuses._client.SubscribeAsync("gaitwatch/#", MqttQualityOfServiceLevel.AtLeastOnce);
            return statuses;
        }

        public Task<JsonElement> UntilAsync(Func<JsonElement, bool> wanted) => Task.Run(() =>
        {
            while (_heard.TryTake(out var status, TimeSpan.FromSeconds(60)))
            {
                if (wanted(status))
                    return status;
            }

            throw new TimeoutException("The status waited for did not come within a minute.");
        });

        public async Task FramesAsync(int count)
        {
            for (var i = 0; i < count; i++)
                Assert.True(await _frames.WaitAsync(TimeSpan.FromSeconds(60)), "No frames within a minute.");
        }

        public void Dispose()
        {
            _client.Dispose();
            _heard.Dispose();
            _frames.Dispose();
        }
    }
}
