using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.KnownEvents;

/// <summary>What moves a cow for a known reason is expected, not a flag.</summary>
public sealed class KnownEventTests
{
    private static readonly SimulatedHerd _sound = new(new HerdSpec { Cows = 30, Days = 80, Seed = 5, EpisodesPer100CowYears = 0, SwappedTags = 0 });

    /// <summary>All four legs of one cow shifted from a day on, as an event would.</summary>
    private static List<HerdInput> Shifted(double day, GaitWatch.Lameness.Balances by, params CowEvent[] events) => Histories.Ordered(
        _sound.Passages.Select(p => p.Cow == "2" && p.At >= Histories.At(day) ? Histories.Map(p, legs => Move(legs, by)) : p), events);

    private static PerLeg<LegLoad> Move(PerLeg<LegLoad> legs, GaitWatch.Lameness.Balances by)
    {
        var shares = (GaitWatch.Lameness.Balances.FromShares(legs.Select(l => l.Share!.Value)) + by).ToShares();
        return PerLeg.From(leg => legs[leg] with { Share = shares[leg] });
    }

    private static List<AlertChange> RaisedFor(List<HerdInput> inputs) =>
        Histories.Fold(inputs).Changes.FindAll(c => c.Kind == AlertChangeKind.Raised && c.Alert.Cow == "2" && c.At >= Histories.At(45));

    [Fact]
    public void The_shift_of_calving_is_a_flag_only_where_no_calving_is_known()
    {
        var shift = new GaitWatch.Lameness.Balances(0.09, 0.01, -0.01);
        Assert.NotEmpty(RaisedFor(Shifted(50, shift)));
        Assert.Empty(RaisedFor(Shifted(50, shift, new Calved("2", Histories.At(49.9)))));
    }

    [Fact]
    public void So_with_a_block()
    {
        var shift = new GaitWatch.Lameness.Balances(0.02, 0, 0.08);
        Assert.NotEmpty(RaisedFor(Shifted(50, shift)));
        Assert.Empty(RaisedFor(Shifted(50, shift, new FootTreated("2", Histories.At(49.9), Leg.Rh, true, false))));
    }

    [Fact]
    public void A_cow_that_lost_a_seventh_of_her_weight_at_calving_is_still_herself()
    {
        PassageInput Lighter(PassageInput p) => p.Cow == "2" && p.At >= Histories.At(50) ? Histories.Map(p, l => l, 0.84) : p;
        int Refused(IEnumerable<HerdInput> inputs) => Histories.Fold(inputs).Assessments.Count(a => a.Cow == "2" && a.At >= Histories.At(50) && !a.Reasons.IsEmpty);
        Assert.True(Refused(_sound.Passages.Select(Lighter)) >= 3);
        Assert.Equal(0, Refused(Histories.Ordered(_sound.Passages.Select(Lighter), new Calved("2", Histories.At(49.9)))));
    }

    [Fact]
    public void A_wrong_weight_refuses_the_passage_but_not_for_ever()
    {
        var inputs = _sound.Passages.Select(p => p.Cow == "2" && p.At >= Histories.At(50) ? Histories.Map(p, l => l, 1.4) : p);
        var hers = Histories.Fold(inputs).Assessments.FindAll(a => a.Cow == "2" && a.At >= Histories.At(50));
        Assert.Contains(QualityReason.WeightImplausible, hers[0].Reasons);
        Assert.Equal(hers[0].OneLegEvidence.Rh, hers[1].OneLegEvidence.Rh, 0.5);
        Assert.Empty(hers[^1].Reasons);
    }
}
