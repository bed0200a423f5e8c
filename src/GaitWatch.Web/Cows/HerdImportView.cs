namespace GaitWatch.Web;

/// <summary>What became of an imported register.</summary>
/// <param name="Taken">How many rows were taken.</param>
/// <param name="Rejected">The rows that were not, and why.</param>
/// <param name="Notices">What else is worth knowing, such as columns that were ignored.</param>
internal sealed record HerdImportView(int Taken, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<string> Notices);

/// <summary>A fault in a row of an imported register.</summary>
/// <param name="Line">The line of the file on which the row begins, from 1.</param>
/// <param name="Field">The column.</param>
/// <param name="Fault">What was found and what would be right.</param>
internal sealed record RejectedRow(int Line, string Field, string Fault);
