namespace GaitWatch.Gait.Tests;

/// <summary>A hind foot that comes down beside the fore foot long before that leaves: refused, not guessed.</summary>
public class UnresolvedTests
{
    /// <summary>Fore and hind foot share the spot for part of the stance; from a seventh on flat force curves leave no dip between them.</summary>
    [Theory]
    [InlineData(0.80, 0.36)]
    [InlineData(0.80, 0.40)]
    [InlineData(0.78, 0.42)]
    public void Feet_on_one_spot_that_cannot_be_parted_are_called_unresolved(double duty, double foreLag)
    {
        var cow = new HalfSineCow { StrideSeconds = 1.9, StrideMetres = 1.15, Duty = duty, ForeLag = foreLag, Power = 0.5 };
        var crossing = Assert.Single(Tape.Analyse(Tape.Walk(cow, 12).Noisy(21)).Crossings);
        Assert.Contains(QualityReason.FootfallsUnresolved, crossing.Reasons);
    }

    [Theory]
    [InlineData(0.76, 0.25)]
    [InlineData(0.78, 0.27)]
    public void A_short_overlap_on_one_spot_is_parted(double duty, double foreLag)
    {
        var cow = new HalfSineCow { StrideSeconds = 1.9, StrideMetres = 1.15, Duty = duty, ForeLag = foreLag };
        var crossing = Assert.Single(Tape.Analyse(Tape.Walk(cow, 12).Noisy(22)).Crossings);
        Assert.Empty(crossing.Reasons);
        foreach (var leg in Legs.All)
            Assert.Equal(cow.Shares[leg], crossing.Legs[leg].Share!.Value, 0.003);
    }
}
