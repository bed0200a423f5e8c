using System.Collections.Concurrent;
using System.Diagnostics;

namespace GaitWatch.Acceptance;

/// <summary>A process of a test's own: what it says is kept, and it is ended by its id at the latest with the test.</summary>
internal sealed class ChildProcess : IAsyncDisposable
{
    private readonly Process _process;
    private readonly ConcurrentQueue<string> _said = new();

    private ChildProcess(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public int Id => _process.Id;

    public bool HasExited => _process.HasExited;

    public StreamWriter Input => _process.StandardInput;

    /// <summary>Everything it wrote, both streams in the order of arrival.</summary>
    public string Said => string.Join('\n', _said);

    public static ChildProcess Start(string program, IEnumerable<string> arguments, string? folder = null)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder ?? Path.GetTempPath(),
        };
        start.Environment["DOTNET_NOLOGO"] = "1";
        return new ChildProcess(Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start."));
    }

    /// <summary>Ends it at once, as a power cut does.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Asks it to end (SIGTERM, or SIGINT as Ctrl-C does) and waits for its exit code.</summary>
    public async Task<int> EndAsync(string signal = "TERM")
    {
        using (var kill = Process.Start("kill", [$"-{signal}", $"{Id}"]))
            await kill.WaitForExitAsync();
        return await ExitAsync(TimeSpan.FromSeconds(60));
    }

    public async Task<int> ExitAsync(TimeSpan patience)
    {
        using var limit = new CancellationTokenSource(patience);
        try
        {
            await _process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            throw new TimeoutException($"{_process.StartInfo.FileName} did not end within {patience}. It said:\n{Said}");
        }

        return _process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            await KillAsync();
        _process.Dispose();
    }

    private void Keep(string? line)
    {
        if (line is not null)
            _said.Enqueue(line);
    }
}
