using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>What became of a form: a finding, or what is wrong with it.</summary>
/// <param name="Finding">The finding; null when there is a fault.</param>
/// <param name="Faults">Everything wrong with it, field and sentence; empty when it is taken.</param>
public sealed record FindingReading(Finding? Finding, ImmutableArray<(string Field, string Fault)> Faults);
