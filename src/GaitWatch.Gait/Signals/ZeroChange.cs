namespace GaitWatch.Gait;

/// <summary>By how much a cell's zero changed from the empty plate before a load to the empty plate after it.</summary>
/// <param name="X">Where the cell is, metres from the entry edge.</param>
/// <param name="Kg">The change, kg.</param>
internal readonly record struct ZeroChange(double X, double Kg);
