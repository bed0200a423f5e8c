using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What each cell reads on an empty platform.</summary>
/// <param name="At">The middle of the empty stretch it was read from.</param>
/// <param name="Kg">One reading a cell, kg, in the order of <see cref="TwinPlate.Cells"/>.</param>
public sealed record ZeroLevels(DateTimeOffset At, ImmutableArray<double> Kg);
