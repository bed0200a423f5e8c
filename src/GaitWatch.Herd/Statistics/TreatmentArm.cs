namespace GaitWatch.Herd;

/// <summary>How a foot with a lesion of the claw horn was treated, told apart as in Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486.</summary>
public enum TreatmentArm
{
    /// <summary>Trimmed, nothing more.</summary>
    Trim,

    /// <summary>Trimmed, a block on the sound claw.</summary>
    TrimAndBlock,

    /// <summary>Trimmed, pain relief.</summary>
    TrimAndPainRelief,

    /// <summary>Trimmed, a block and pain relief.</summary>
    TrimBlockAndPainRelief,
}
