using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Simulator.Tests;

/// <summary>Debian's broker, on a free port with a folder of its own, ended by its id.</summary>
internal sealed class Mosquitto : IDisposable
{
    private readonly Process _process;
    private readonly string _folder;

    private Mosquitto(Process process, string folder, int port) => (_process, _folder, Port) = (process, folder, port);

    public int Port { get; }

    public static async Task<Mosquitto> StartAsync()
    {
        var program = new[] { "/usr/sbin/mosquitto", "/usr/bin/mosquitto", "/usr/local/sbin/mosquitto" }.FirstOrDefault(File.Exists)
            ?? throw new InvalidOperationException("mosquitto is not installed; on Debian: apt-get install mosquitto.");
        var port = Ports.Free();
        var folder = Directory.CreateTempSubdirectory("simulator-mosquitto-").FullName;
        var settings = Path.Combine(folder, "mosquitto.conf");
        await File.WriteAllTextAsync(settings, $"listener {port} 127.0.0.1\nallow_anonymous true\nmax_queued_messages 100000\n");
        var process = Process.Start(new ProcessStartInfo(program, ["-c", settings]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        var broker = new Mosquitto(process, folder, port);
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                using var probe = new TcpClient();
                await probe.ConnectAsync(IPAddress.Loopback, port);
                return broker;
            }
            catch (SocketException) when (attempt < 100 && !process.HasExited)
            {
                await Task.Delay(50);
            }
        }
    }

    public void Dispose()
    {
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}

internal static class Ports
{
    /// <summary>A port that nobody listens on just now.</summary>
    public static int Free()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
