using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>A load cell of the simulated platform.</summary>
/// <param name="Id">Its name in the frames.</param>
/// <param name="IsLeft">True under the left plate, false under the right.</param>
/// <param name="X">Where it stands along the walking direction, metres from the entry edge.</param>
public sealed record SimulatedCell(string Id, bool IsLeft, double X);

/// <summary>A twin plate: its geometry, and how true its cells are.</summary>
public sealed record SimulatedPlatform
{
    /// <summary>Its name in the topics.</summary>
    public string Id { get; init; } = "parlour-exit";

    /// <summary>Length along the walking direction, metres.</summary>
    public double PlateLengthMetres { get; init; } = 2.4;

    /// <summary>Sampling rate, Hz.</summary>
    public double Hz { get; init; } = 200;

    /// <summary>The cells, in the order of <see cref="SimulatedCrossing.Samples"/>; at least two different <c>x</c> a plate.</summary>
    public ImmutableArray<SimulatedCell> Cells { get; init; } =
        [new("l0", true, 0.0), new("l1", true, 2.4), new("r0", false, 0.0), new("r1", false, 2.4)];

    /// <summary>Step of the figures it sends, kg.</summary>
    public double IntervalKg { get; init; } = 0.1;

    /// <summary>How its cells and plates err; null draws them anew for each crossing from its seed.</summary>
    public PlatformSensors? Sensors { get; init; }

    /// <summary>The platform of the contract's example: 2.4 m, 200 Hz, a cell at each end of each plate.</summary>
    public static SimulatedPlatform Default { get; } = new();

    /// <summary>A platform with cells spread evenly from edge to edge.</summary>
    /// <param name="lengthMetres">Length of the plates, metres.</param>
    /// <param name="hz">Sampling rate, Hz.</param>
    /// <param name="cellsPerPlate">Cells under each plate, two or more.</param>
    /// <param name="insetMetres">How far the outer cells stand inside the plate's ends, metres.</param>
    public static SimulatedPlatform Of(double lengthMetres, double hz, int cellsPerPlate = 2, double insetMetres = 0)
    {
        var cells = ImmutableArray.CreateBuilder<SimulatedCell>();
        foreach (var left in new[] { true, false })
        {
            for (var i = 0; i < cellsPerPlate; i++)
            {
                var x = insetMetres + (lengthMetres - 2 * insetMetres) * i / (cellsPerPlate - 1);
                cells.Add(new($"{(left ? 'l' : 'r')}{i}", left, x));
            }
        }

        return new() { PlateLengthMetres = lengthMetres, Hz = hz, Cells = cells.ToImmutable() };
    }
}
