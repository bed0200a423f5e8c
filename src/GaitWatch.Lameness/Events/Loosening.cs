namespace GaitWatch.Lameness;

/// <summary>What a known event does to what is expected of a cow: how far and how fast her normal may now move without it being lameness.</summary>
/// <remarks>
/// That calving shifts load is published (Chapinal N. et al. 2009, J Dairy Sci 92:581-588: most of the fetus' weight in front, udder behind); that a trim,
/// a block and its removal change the gait for days is common practice, no source. The sizes are ours, of balances, chosen wide: too wide
/// costs some days of sensitivity, too narrow a false flag.
/// </remarks>
/// <param name="Uncertainty">Added to the uncertainty of her mean.</param>
/// <param name="DriftPerDay">Added to the drift, a day.</param>
/// <param name="DriftFor">For so long.</param>
/// <param name="HoldFor">No evidence for so long.</param>
/// <param name="ForgetsWeight">Whether her weight is learnt anew.</param>
internal sealed record Loosening(Matrix3 Uncertainty, Matrix3 DriftPerDay, TimeSpan DriftFor, TimeSpan HoldFor, bool ForgetsWeight)
{
    private static readonly Loosening _calving = new(
        Squares(0.06, 0.015, 0.015), Squares(0.005, 0.001, 0.001), TimeSpan.FromDays(30), TimeSpan.FromDays(2), true);

    private static readonly Loosening _dryOff = new(
        Squares(0.06, 0.015, 0.015), Squares(0.004, 0.001, 0.001), TimeSpan.FromDays(30), TimeSpan.Zero, true);

    private static readonly Loosening _trim = new(
        Squares(0.015, 0.015, 0.015), Squares(0.004, 0.004, 0.004), TimeSpan.FromDays(7), TimeSpan.FromDays(1), false);

    private static readonly Loosening _block = new(
        Squares(0.04, 0.04, 0.04), Squares(0.01, 0.01, 0.01), TimeSpan.FromDays(10), TimeSpan.FromDays(3), false);

    private static readonly Loosening _newTag = new(
        Squares(0.03, 0.03, 0.03), Matrix3.Zero, TimeSpan.Zero, TimeSpan.Zero, false);

    /// <summary>What an event does; events that close an alert or take her out of the herd are not asked.</summary>
    public static Loosening Of(CowEvent known) => known switch
    {
        Calved => _calving,
        DriedOff => _dryOff,
        FootTreated { BlockOn: false, BlockOff: false } => _trim,
        FootTreated => _block,
        _ => _newTag,
    };

    private static Matrix3 Squares(double foreHind, double fore, double hind) =>
        Matrix3.Diagonal(foreHind * foreHind, fore * fore, hind * hind);
}
