namespace GaitWatch.Simulator;

/// <summary>From footfalls to legs.</summary>
internal static class LegTruths
{
    /// <summary>What each leg truly did, by its whole footfalls: the means that the wire contract defines.</summary>
    public static PerFoot<LegTruth> Of(IReadOnlyCollection<FootfallTruth> wholes)
    {
        var of = PerFoot.From(foot => wholes.Where(footfall => footfall.Foot == foot).ToArray());
        var loads = of.Select(list => list.Length == 0 ? null : (double?)list.Average(footfall => footfall.LoadKg!.Value));
        var sum = loads.Lf + loads.Rf + loads.Lh + loads.Rh;
        return PerFoot.From(foot => of[foot].Length == 0
            ? new LegTruth(null, null, null, null, 0)
            : new LegTruth(loads[foot], loads[foot] / sum, of[foot].Average(f => f.PeakKg), of[foot].Average(f => f.StanceSeconds), of[foot].Length));
    }
}
