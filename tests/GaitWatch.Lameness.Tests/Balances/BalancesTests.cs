using CsCheck;
using GaitWatch.Gait;
using B = GaitWatch.Lameness.Balances;

namespace GaitWatch.Lameness.Tests.BalancesOfShares;

public sealed class BalancesTests
{
    private static readonly Gen<PerLeg<double>> _shares =
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[0.05, 1], Gen.Double[0.05, 1], Gen.Double[0.05, 1])
            .Select((a, b, c, d) => new PerLeg<double>(a / (a + b + c + d), b / (a + b + c + d), c / (a + b + c + d), d / (a + b + c + d)));

    /// <summary>
    /// By hand: fore 0.4 and 0.1, hind 0.4 and 0.1. Fore-hind ln(0.2 / 0.2) = 0; each pair sqrt(1/2) ln 4 = 0.980258.
    /// </summary>
    [Fact]
    public void A_composition_worked_by_hand()
    {
        var b = B.FromShares(new PerLeg<double>(0.4, 0.1, 0.4, 0.1));
        Assert.Equal(0, b.ForeHind, 1e-12);
        Assert.Equal(0.980258, b.Fore, 1e-6);
        Assert.Equal(0.980258, b.Hind, 1e-6);
    }

    /// <summary>Egozcue J.J. et al. 2003, Math Geol 35:279-300: a balance of r against s parts is sqrt(r s / (r + s)) ln of the ratio of their geometric means.</summary>
    [Fact]
    public void The_published_formula() => _shares.Sample(s =>
    {
        var b = B.FromShares(s);
        Assert.Equal(Math.Sqrt(2.0 * 2 / 4) * Math.Log(Math.Sqrt(s.Lf * s.Rf) / Math.Sqrt(s.Lh * s.Rh)), b.ForeHind, 1e-12);
        Assert.Equal(Math.Sqrt(1.0 / 2) * Math.Log(s.Lf / s.Rf), b.Fore, 1e-12);
        Assert.Equal(Math.Sqrt(1.0 / 2) * Math.Log(s.Lh / s.Rh), b.Hind, 1e-12);
    });

    [Fact]
    public void Shares_come_back() => _shares.Sample(s =>
    {
        var back = B.FromShares(s).ToShares();
        foreach (var leg in Legs.All)
            Assert.Equal(s[leg], back[leg], 1e-12);
    });

    [Fact]
    public void Only_ratios_matter() => _shares.Sample(s =>
    {
        var kilograms = B.FromShares(s.Select(x => 640 * x));
        Assert.Equal(B.FromShares(s).ForeHind, kilograms.ForeHind, 1e-12);
    });

    [Fact]
    public void A_share_of_nothing_is_refused_by_its_leg()
    {
        var e = Assert.Throws<ArgumentOutOfRangeException>(() => B.FromShares(new PerLeg<double>(0.3, 0.3, 0.4, 0)));
        Assert.Contains("rh", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_leg_gives_up_the_others_carry() => Gen.Select(_shares, Gen.Double[-0.3, 0.5], Gen.Enum<Leg>()).Sample((s, f, leg) =>
    {
        var after = Unloading.OneLeg(s, leg, f);
        Assert.Equal(1, after.Lf + after.Rf + after.Lh + after.Rh, 1e-12);
        Assert.Equal(s[leg] * (1 - f), after[leg], 1e-12);
        Assert.Equal(s[leg.Opposite()] + (0.75 * f * s[leg]), after[leg.Opposite()], 1e-12);
    });

    [Fact]
    public void What_a_pair_gives_up_the_other_carries() => Gen.Select(_shares, Gen.Double[-0.3, 0.5], Gen.Bool).Sample((s, f, fore) =>
    {
        var after = Unloading.Pair(s, fore, f);
        Assert.Equal(1, after.Lf + after.Rf + after.Lh + after.Rh, 1e-12);
        Assert.Equal((fore ? s.Lf : s.Lh) * (1 - f), fore ? after.Lf : after.Lh, 1e-12);
    });
}
