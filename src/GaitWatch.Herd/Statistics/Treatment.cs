namespace GaitWatch.Herd;

/// <summary>
/// What was done to a foot beyond the trim, as far as treatments of that kind of lesion differ in it. Lesions of the claw horn and
/// foreign bodies are told apart by block and pain relief, as in Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486; lesions of the
/// skin by dressing, antibiotic and pain relief (common practice, no source).
/// </summary>
[Flags]
public enum Treatment
{
    /// <summary>Trimmed, nothing more that counts. Wire: <c>trim</c>.</summary>
    Trim = 0,

    /// <summary>A block on the sound claw. Wire: <c>block</c>.</summary>
    Block = 1,

    /// <summary>Pain relief. Wire: <c>pain-relief</c>.</summary>
    PainRelief = 2,

    /// <summary>A dressing, with a wrap or without. Wire: <c>dressing</c>.</summary>
    Dressing = 4,

    /// <summary>An antibiotic. Wire: <c>antibiotic</c>.</summary>
    Antibiotic = 8,
}
