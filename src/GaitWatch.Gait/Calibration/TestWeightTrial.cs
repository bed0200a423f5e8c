using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What was read in a check of a platform with a test weight, in the order it was read.</summary>
/// <param name="WeightKg">The test weight, kg.</param>
/// <param name="EmptyBefore">What the cells read before the weight first stood there.</param>
/// <param name="Places">What they read with the weight in each place.</param>
/// <param name="EmptyAfter">What they read after it was taken off for good.</param>
public sealed record TestWeightTrial(double WeightKg, CellReadings EmptyBefore, ImmutableArray<PlacedReadings> Places, CellReadings EmptyAfter);

/// <summary>What each cell read at an instant, zero offset not removed.</summary>
/// <param name="At">When.</param>
/// <param name="Kg">One reading a cell, kg, in the order of <see cref="TwinPlate.Cells"/>.</param>
public sealed record CellReadings(DateTimeOffset At, ImmutableArray<double> Kg);

/// <summary>What each cell read with the weight over one of them.</summary>
/// <param name="Cell">Id of the cell over which the weight stood.</param>
/// <param name="Readings">What was read.</param>
public sealed record PlacedReadings(string Cell, CellReadings Readings);
