using System.Globalization;
using ScottPlot;

namespace GaitWatch.Benchmarks;

/// <summary>Stated probabilities against how often they came true (Murphy A.H., Winkler R.L. 1977, Appl Stat 26:41-47).</summary>
internal static class ReliabilityDiagram
{
    private const int Bins = 10;

    /// <summary>One bin of stated probabilities.</summary>
    /// <param name="Stated">Their mean.</param>
    /// <param name="Came">How often they came true.</param>
    /// <param name="Count">How many there were.</param>
    internal readonly record struct Bin(double Stated, double Came, int Count);

    /// <summary>The bins that are not empty.</summary>
    public static List<Bin> Of(IEnumerable<(double Probability, bool IsTrue)> calls) =>
    [
        .. calls.GroupBy(c => Math.Min((int)(Bins * c.Probability), Bins - 1)).OrderBy(g => g.Key)
            .Select(g => new Bin(g.Average(c => c.Probability), g.Average(c => c.IsTrue ? 1.0 : 0), g.Count())),
    ];

    /// <summary>Mean distance of stated from true, weighted by how many.</summary>
    public static double Error(IReadOnlyList<Bin> bins) => bins.Sum(b => b.Count * Math.Abs(b.Stated - b.Came)) / bins.Sum(b => b.Count);

    /// <summary>Writes the picture.</summary>
    public static void Write(IReadOnlyList<Bin> bins, string title, string file)
    {
        using var plot = new Plot();
        var diagonal = plot.Add.Line(0, 0, 1, 1);
        diagonal.LinePattern = LinePattern.Dashed;
        diagonal.Color = Colors.Gray;
        var line = plot.Add.Scatter(bins.Select(b => b.Stated).ToArray(), bins.Select(b => b.Came).ToArray());
        line.LineWidth = 2;
        line.MarkerSize = 8;
        foreach (var bin in bins)
        {
            // Two standard errors of a proportion; from few cases wide.
            var half = 2 * Math.Sqrt(Math.Max(bin.Came * (1 - bin.Came), 0.25 / bin.Count) / bin.Count);
            plot.Add.Line(bin.Stated, Math.Max(bin.Came - half, 0), bin.Stated, Math.Min(bin.Came + half, 1)).Color = line.Color;
            plot.Add.Text(bin.Count.ToString(CultureInfo.InvariantCulture), bin.Stated + 0.015, bin.Came);
        }

        plot.Title(title);
        plot.XLabel("probability stated for a leg");
        plot.YLabel("part of those legs that were sore");
        plot.Axes.SetLimits(-0.02, 1.05, -0.02, 1.05);
        plot.SavePng(file, 720, 640);
    }
}
