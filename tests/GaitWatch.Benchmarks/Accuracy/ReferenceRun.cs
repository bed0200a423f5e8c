using System.Diagnostics;
using System.Text.Json;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>The plain numpy/scipy reference (Debian's python3-scipy) on recordings written to a temporary folder.</summary>
/// <param name="most">How many recordings of a kind it is asked for.</param>
internal sealed class ReferenceRun(int most) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitwatch-reference-").FullName;
    private int _batches;
    private Task _last = Task.CompletedTask;

    /// <summary>It is asked for at most so many recordings of a kind.</summary>
    public int Most { get; } = most;

    /// <summary>What the reference says of each crossing; it runs beside us, one batch after another.</summary>
    public Task<IReadOnlyList<Measured>> MeasureAsync(IReadOnlyList<SimulatedCrossing> crossings)
    {
        var number = _batches++;
        var answer = After(_last);
        _last = answer;
        return answer;

        async Task<IReadOnlyList<Measured>> After(Task last)
        {
            await last;
            return await Task.Run(() => Measure(crossings, number));
        }
    }

    private IReadOnlyList<Measured> Measure(IReadOnlyList<SimulatedCrossing> crossings, int number)
    {
        if (crossings.Count == 0)
            return [];
        var samples = Path.Combine(_folder, $"samples-{number}.f32");
        var index = Path.Combine(_folder, $"index-{number}.json");
        var answer = Path.Combine(_folder, $"answer-{number}.json");
        using (var file = new BinaryWriter(File.Create(samples)))
        {
            foreach (var cell in crossings.SelectMany(crossing => crossing.Samples))
                file.Write(System.Runtime.InteropServices.MemoryMarshal.AsBytes(cell.AsSpan()));
        }

        var platform = crossings[0].Platform;
        File.WriteAllText(index, JsonSerializer.Serialize(new
        {
            hz = platform.Hz,
            length = platform.PlateLengthMetres,
            cells = platform.Cells.Select(cell => new { left = cell.IsLeft, x = cell.X }),
            counts = crossings.Select(crossing => crossing.SampleCount),
        }));
        var script = Path.Combine(AppContext.BaseDirectory, "Reference", "gait_reference.py");
        using var python = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script, index, samples, answer]) { RedirectStandardError = true })!;
        var errors = python.StandardError.ReadToEnd();
        python.WaitForExit();
        if (python.ExitCode != 0)
            throw new InvalidOperationException($"The reference ended with {python.ExitCode}: {errors}");
        using var document = JsonDocument.Parse(File.ReadAllText(answer));
        File.Delete(samples);
        return [.. document.RootElement.EnumerateArray().Select(Read)];
    }

    private static Measured Read(JsonElement answer)
    {
        if (answer.ValueKind != JsonValueKind.Object)
            return Measured.Refused;
        double[] Numbers(string name) => [.. answer.GetProperty(name).EnumerateArray().Select(number => number.GetDouble())];
        var (shares, peaks, stances) = (Numbers("share"), Numbers("peak"), Numbers("stance"));
        return new(true, answer.GetProperty("weight").GetDouble(), answer.GetProperty("stride").GetDouble(), PerFoot.From(foot =>
            (shares[(int)foot], (double?)null, peaks[(int)foot], stances[(int)foot])));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
