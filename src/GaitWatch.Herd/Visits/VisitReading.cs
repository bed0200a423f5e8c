using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>What became of a form: a write, or what is wrong with it.</summary>
/// <param name="Write">The write; null when there is a fault.</param>
/// <param name="Faults">Everything wrong, field and sentence.</param>
public sealed record VisitReading(FarmWrite? Write, ImmutableArray<(string Field, string Fault)> Faults);
