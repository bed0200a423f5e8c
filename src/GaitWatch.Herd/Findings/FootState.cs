namespace GaitWatch.Herd;

/// <summary>What a foot wears, as its findings tell.</summary>
public sealed record FootState
{
    /// <summary>A foot that wears nothing and of which nothing was recorded.</summary>
    public static FootState Bare { get; } = new();

    /// <summary>When the block now worn was put on; null when none is.</summary>
    public DateTimeOffset? BlockSince { get; init; }

    /// <summary>The claw that carries it; null when none is worn, or not said.</summary>
    public Claw? BlockClaw { get; init; }

    /// <summary>When the wrap now worn was put on; null when none is.</summary>
    public DateTimeOffset? WrapSince { get; init; }

    /// <summary>The newest finding; of several in one session the gravest, so that "nothing found" on the other claw does not hide a lesion.</summary>
    public Finding? Last { get; init; }

    /// <summary>The newest word on digital dermatitis: its stage is null when not said; null when there was none, or it is gone.</summary>
    public Finding? Dermatitis { get; init; }

    /// <summary>Whether digital dermatitis is known to be active; a stage not said is taken as active.</summary>
    public bool HasActiveDermatitis => Dermatitis is { } finding && (finding.MStage is not { } stage || stage.IsActive());

    /// <summary>The state after some findings of one foot.</summary>
    /// <param name="findings">Findings of one foot of one cow, in any order, each id once.</param>
    /// <param name="removals">What the farm itself took off that foot, by time; null for nothing.</param>
    public static FootState Of(IEnumerable<Finding> findings, IEnumerable<FarmRemoval>? removals = null)
    {
        var state = Bare;
        var off = new Queue<FarmRemoval>(removals ?? []);
        foreach (var finding in findings.Order(Finding.ByTime))
        {
            // Off before on, also in one instant.
            while (off.TryPeek(out var removal) && removal.At <= finding.At)
                state = state.After(off.Dequeue());
            state = state.After(finding);
        }

        return off.Aggregate(state, (worn, removal) => worn.After(removal));
    }

    private FootState After(FarmRemoval removal) => removal.What == FindingAction.WrapOff
        ? this with { WrapSince = null }
        : this with { BlockSince = null, BlockClaw = null };

    private FootState After(Finding finding)
    {
        var next = this;
        // Off before on: a session that takes one off and puts one on ends with one on.
        if (finding.Did(FindingAction.BlockOff) || finding.Did(FindingAction.BlockLost))
            next = next with { BlockSince = null, BlockClaw = null };
        if (finding.Did(FindingAction.Block))
            next = next with { BlockSince = finding.At, BlockClaw = finding.BlockClaw };
        if (finding.Did(FindingAction.WrapOff))
            next = next with { WrapSince = null };
        if (finding.Did(FindingAction.Wrap))
            next = next with { WrapSince = finding.At };
        if (finding.Lesion == Lesion.DigitalDermatitis)
            next = next with { Dermatitis = finding };
        else if (finding.Lesion == Lesion.None && (Dermatitis is null || finding.At - Dermatitis.At > FootWork.OneSession))
            next = next with { Dermatitis = null };
        var hides = finding.Lesion == Lesion.None && Last is { } last && last.Lesion != Lesion.None && finding.At - last.At <= FootWork.OneSession;
        return hides ? next : next with { Last = finding };
    }
}
