using System.Globalization;
using System.Runtime.InteropServices;

namespace GaitWatch.Benchmarks;

/// <summary>What the figures were measured on; without it they say nothing.</summary>
internal static class Surroundings
{
    public static void Write()
    {
        var load = File.Exists("/proc/loadavg") ? $", load {File.ReadAllText("/proc/loadavg").Split(' ')[0]} at the start" : "";
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Environment.ProcessorCount} cores ({RuntimeInformation.ProcessArchitecture}), {RuntimeInformation.OSDescription.Trim()}, {RuntimeInformation.FrameworkDescription}{load}"));
        Console.WriteLine("Absolute figures are of this machine at this hour; ratios within one run are what to compare.");
    }
}
