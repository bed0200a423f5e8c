using System.Net.Sockets;

namespace GaitWatch.Acceptance;

/// <summary>Debian's Mosquitto on a free port of loopback with its own folder: a broker that is not ours.</summary>
internal sealed class MosquittoBroker : IAsyncDisposable
{
    private readonly string _configuration;
    private ChildProcess _process;

    private MosquittoBroker(string configuration, ChildProcess process, int port)
    {
        _configuration = configuration;
        _process = process;
        Port = port;
    }

    public int Port { get; }

    public static async Task<MosquittoBroker> StartAsync(string folder)
    {
        var port = Programs.FreePort();
        var own = Directory.CreateDirectory(Path.Combine(folder, "mosquitto")).FullName;
        // Run as root Mosquitto would change to a user that may not write here.
        var configuration = Path.Combine(own, "mosquitto.conf");
        await File.WriteAllLinesAsync(configuration,
        [
            $"listener {port} 127.0.0.1", "allow_anonymous true", "persistence true", $"persistence_location {own}/", "autosave_interval 1",
            "max_queued_messages 0", $"user {Environment.UserName}",
        ]);
        var broker = new MosquittoBroker(configuration, Start(configuration), port);
        await broker.ListensAsync();
        return broker;
    }

    public Task KillAsync() => _process.KillAsync();

    /// <summary>Ends it in order: it saves what it holds.</summary>
    public Task<int> EndAsync() => _process.EndAsync();

    public async Task RestartAsync()
    {
        _process = Start(_configuration);
        await ListensAsync();
    }

    public async ValueTask DisposeAsync() => await _process.DisposeAsync();

    private static ChildProcess Start(string configuration) => ChildProcess.Start(Programs.Mosquitto, ["-c", configuration]);

    private Task<bool> ListensAsync() => Until.AsyncOf(
        "Mosquitto to listen",
        async () =>
        {
            try
            {
                using var probe = new TcpClient();
                await probe.ConnectAsync("127.0.0.1", Port);
                return true;
            }
            catch (SocketException)
            {
                return false;
            }
        },
        listens => listens, TimeSpan.FromSeconds(30), () => _process.Said);
}
