using System.Diagnostics;
using System.Net.Sockets;

namespace GaitWatch.Barn.Tests;

/// <summary>Debian's Mosquitto on a free port of the loopback with a folder and settings of its own, ended by its id.</summary>
internal sealed class Mosquitto : IAsyncDisposable
{
    public const string Program = "/usr/sbin/mosquitto";

    private readonly TempFolder _folder = new();
    private readonly string _config;
    private Process? _process;

    private Mosquitto(int port, string more)
    {
        Port = port;
        _config = Path.Combine(_folder.Path, "mosquitto.conf");
        File.WriteAllText(_config, $"""
            listener {port} 127.0.0.1
            persistence true
            persistence_location {_folder.Path}/
            autosave_interval 1
            autosave_on_changes true
            max_queued_messages 100000
            log_dest file {_folder.Path}/mosquitto.log
            {more}
            """);
    }

    public int Port { get; }

    public static async Task<Mosquitto> StartAsync(string settings = "allow_anonymous true")
    {
        Assert.True(File.Exists(Program), $"{Program} is missing: apt-get install mosquitto");
        var mosquitto = new Mosquitto(FreePort.Find(), settings);
        await mosquitto.RunAsync();
        return mosquitto;
    }

    /// <summary>Ends it as a power cut would; its settings and kept messages stay.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        _process = null;
    }

    public async Task RunAsync()
    {
        // Started as root it would change to an account that cannot read the folder.
        var user = Environment.UserName == "root" ? "\nuser root" : "";
        if (user.Length > 0 && !File.ReadAllText(_config).Contains(user, StringComparison.Ordinal))
            File.AppendAllText(_config, user);
        _process = Process.Start(new ProcessStartInfo(Program, ["-c", _config]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        await Eventually.HoldsAsync("mosquitto listens", async () =>
        {
            if (_process.HasExited)
                Assert.Fail($"mosquitto ended: {await _process.StandardError.ReadToEndAsync()} {File.ReadAllText(Path.Combine(_folder.Path, "mosquitto.log"))}");
            using var socket = new TcpClient();
            try
            {
                await socket.ConnectAsync("127.0.0.1", Port);
                return true;
            }
            catch (SocketException)
            {
                return false;
            }
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _folder.Dispose();
    }
}
