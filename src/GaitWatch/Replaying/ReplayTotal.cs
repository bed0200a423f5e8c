namespace GaitWatch;

/// <summary>What became of a recording, or of a part of it, as <c>POST /api/inputs</c> answers.</summary>
/// <param name="Lines">How many lines held something.</param>
/// <param name="Stored">How many inputs were new.</param>
/// <param name="Duplicates">How many were there already.</param>
/// <param name="Rejected">How many lines could not be used.</param>
/// <param name="Faults">The first of these.</param>
internal sealed record ReplayTotal(long Lines, long Stored, long Duplicates, long Rejected, IReadOnlyList<ReplayFault> Faults)
{
    // As many as one can read on a terminal.
    private const int FaultsKept = 20;

    /// <summary>Nothing yet.</summary>
    public static ReplayTotal Nothing { get; } = new(0, 0, 0, 0, []);

    /// <summary>This and a later part, whose lines are counted on from those before it.</summary>
    public ReplayTotal Plus(ReplayTotal part, long linesBefore) => new(
        Lines + part.Lines, Stored + part.Stored, Duplicates + part.Duplicates, Rejected + part.Rejected,
        [.. Faults.Concat(part.Faults.Select(fault => fault with { Line = fault.Line + linesBefore })).Take(FaultsKept)]);
}

/// <summary>Why a line was not used.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Fault">What was found and what would be right.</param>
internal sealed record ReplayFault(long Line, string Fault);
