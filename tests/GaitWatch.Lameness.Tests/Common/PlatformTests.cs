using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.CommonMovement;

public sealed class PlatformTests
{
    private static readonly SimulatedHerd _herd = new(new HerdSpec { Cows = 50, Days = 75, Seed = 21, EpisodesPer100CowYears = 0, SwappedTags = 0 });

    /// <summary>A second platform reads everybody a tenth of the hind balance differently: that is its level, to be learnt.</summary>
    [Fact]
    public void A_new_platform_of_another_level_flags_nobody()
    {
        var moved = _herd.Passages.Select(p => p.At < Histories.At(50) ? p : Elsewhere(p)).ToList();
        var (before, _, _) = Histories.Fold(_herd.Passages);
        var (after, _, fold) = Histories.Fold(moved);
        var (usual, here) = (Raised(before), Raised(after));
        Assert.True(here <= usual + 2, $"{here} flags on the new platform, {usual} on the old one");
        var shifts = fold.Shifts;
        Assert.Equal(["exit", "second"], shifts.Select(s => s.Platform));
        Assert.False(shifts[1].IsTrouble);
        Assert.InRange(shifts[1].Movement.Hind, 0.08, 0.12);

        static int Raised(List<AlertChange> changes) => changes.Count(c => c.Kind == AlertChangeKind.Raised && c.At > Histories.At(50));

        static PassageInput Elsewhere(PassageInput p)
        {
            var legs = p.Passage.Legs;
            var shares = (GaitWatch.Lameness.Balances.FromShares(legs.Select(l => l.Share!.Value)) + new GaitWatch.Lameness.Balances(0, 0, 0.1)).ToShares();
            return p with { Passage = p.Passage with { Platform = "second", Legs = PerLeg.From(leg => legs[leg] with { Share = shares[leg] }) } };
        }
    }

    /// <summary>A passage that says it was measured badly widens what is expected of it.</summary>
    [Fact]
    public void A_known_measuring_error_counts_as_noise()
    {
        PassageInput WithError(PassageInput p, double error) => Histories.Map(p, legs => legs.Select(l => l with { ShareError = error }));
        var bad = _herd.Passages.Count - 100;
        var (_, good, _) = Histories.Fold(_herd.Passages.Select(p => WithError(p, 0.001)));
        var (_, mixed, _) = Histories.Fold(_herd.Passages.Select((p, i) => WithError(p, i == bad ? 0.02 : 0.001)));
        Assert.True(mixed[bad].ShareSpread!.Value.Rh > 1.5 * good[bad].ShareSpread!.Value.Rh);
        Assert.Equal(good[bad - 1].ShareSpread, mixed[bad - 1].ShareSpread);
    }

    [Fact]
    public void The_mean_of_a_session_is_shrunk_while_few_have_crossed()
    {
        var platform = new PlatformMovement(isFirst: true);
        platform.Enter(TimeSpan.TicksPerDay);
        var spread = Matrix3.Diagonal(0.0016, 0.0016, 0.0016);
        var moved = new Vector3(0.01, 0, 0);
        platform.Add(moved, spread, spread, 1);
        var one = platform.Current.Movement.X;
        for (var i = 0; i < 40; i++)
            platform.Add(moved, spread, spread, 1);
        var many = platform.Current.Movement.X;
        Assert.InRange(one, 0, 0.002);
        Assert.InRange(many, 0.005, 0.01);
        // By hand: all within the edge, so session variance 0.01 squared against 0.0016 / n.
        Assert.Equal(0.01 * 1e-4 / (1e-4 + (0.0016 / 41)), many, 1e-9);
    }
}
