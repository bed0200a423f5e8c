using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace GaitWatch.Benchmarks;

/// <summary>A folder, free ports and processes of a benchmark's own.</summary>
internal sealed class Workshop : IDisposable
{
    private readonly List<Process> _processes = [];

    public string Folder { get; } = Directory.CreateTempSubdirectory("gaitwatch-benchmark-").FullName;

    public string File(string name) => Path.Combine(Folder, name);

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public Process Start(string program, params IEnumerable<string> arguments)
    {
        var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = Folder, RedirectStandardError = true, RedirectStandardOutput = true })!;
        // Read away, or a full pipe would stop it.
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        _processes.Add(process);
        return process;
    }

    /// <summary>The program, as it was built beside the benchmarks.</summary>
    public Process StartGaitWatch(params IEnumerable<string> arguments) =>
        Start("dotnet", [Path.Combine(AppContext.BaseDirectory, "gaitwatch.dll"), .. arguments]);

    public async Task<int> MosquittoAsync()
    {
        var port = FreePort();
        await System.IO.File.WriteAllLinesAsync(File("mosquitto.conf"),
            [$"listener {port} 127.0.0.1", "allow_anonymous true", "max_queued_messages 0", $"user {Environment.UserName}"]);
        Start(System.IO.File.Exists("/usr/sbin/mosquitto") ? "/usr/sbin/mosquitto" : "mosquitto", "-c", File("mosquitto.conf"));
        for (var tries = 0; ; tries++)
        {
            try
            {
                using var probe = new TcpClient();
                await probe.ConnectAsync("127.0.0.1", port);
                return port;
            }
            catch (SocketException) when (tries < 100)
            {
                await Task.Delay(100);
            }
        }
    }

    public void Dispose()
    {
        foreach (var process in _processes)
        {
            if (!process.HasExited)
            {
                process.Kill();
                process.WaitForExit();
            }

            process.Dispose();
        }

        Directory.Delete(Folder, recursive: true);
    }
}
