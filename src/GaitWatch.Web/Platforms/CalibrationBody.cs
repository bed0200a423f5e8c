using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body of a check with a test weight.</summary>
internal sealed record CalibrationBody
{
    [Description("When the check ended; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("Who did it, at most 100 characters.")]
    public required string By { get; init; }

    [Description("The test weight, kg.")]
    public required double WeightKg { get; init; }

    [Description("What was seen, at most 1,000 characters.")]
    public string? Note { get; init; }

    [Description("What the cells read before the weight first stood there.")]
    public required CellReadingsBody EmptyBefore { get; init; }

    [Description("What they read with the weight in each place, in the order it was read.")]
    public required IReadOnlyList<PlacedReadingsBody> Places { get; init; }

    [Description("What they read after it was taken off for good.")]
    public required CellReadingsBody EmptyAfter { get; init; }
}

/// <summary>What each cell read at an instant.</summary>
internal record CellReadingsBody
{
    [Description("When.")]
    public required DateTimeOffset At { get; init; }

    [Description("One reading a cell by the cell's id, kg, zero offset not removed.")]
    public required IReadOnlyDictionary<string, double> Cells { get; init; }
}

/// <summary>What each cell read with the weight over one of them.</summary>
internal sealed record PlacedReadingsBody : CellReadingsBody
{
    [Description("Id of the cell over which the weight stood.")]
    public required string Cell { get; init; }
}
