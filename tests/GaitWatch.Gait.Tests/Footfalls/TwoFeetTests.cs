namespace GaitWatch.Gait.Tests;

/// <summary>The two-foot system against statics worked by hand.</summary>
public class TwoFeetTests
{
    /// <summary>
    /// A plate of 2.4 m on a cell at each end. 120 kg stand at 0.6 m and 200 kg at 2.0 m. Moments about the entry edge: the far
    /// cell carries (120 x 0.6 + 200 x 2.0) / 2.4 = 472 / 2.4 = 196.667 kg, the near one 320 - 196.667 = 123.333 kg. So F = 320 kg,
    /// M = 472 kg m, and F2 = (472 - 320 x 0.6) / (2.0 - 0.6) = 280 / 1.4 = 200 kg. Alone, 120 kg at 0.6 m put 120 x 0.6 / 2.4 = 30 kg on the
    /// far cell, 200 kg at 2.0 m put 200 x 2.0 / 2.4 = 166.667 kg there.
    /// </summary>
    [Fact]
    public void Two_standing_feet_are_told_apart_as_by_hand()
    {
        // Alone at 0.6 m for a second, both for a second, then alone at 2.0 m.
        var force = new double[600];
        var moment = new double[600];
        for (var i = 0; i < 600; i++)
        {
            var (near, far) = i < 200 ? (90.0, 30.0) : i < 400 ? (123.3333333333, 196.6666666667) : (33.3333333333, 166.6666666667);
            (force[i], moment[i]) = (near + far, 2.4 * far);
        }

        var plate = new PlateSignal(force, moment, 200, 2.4);
        List<FootOnPlate> feet =
        [
            new() { Side = PlateSide.Left, Contact = 0, Lift = 399, LiftEvent = FootEvent.Transfer, PlaceX = 0.6, Line = new PressureLine(0.6, 0, 0, 0) },
            new() { Side = PlateSide.Left, Contact = 200, Lift = 599, ContactEvent = FootEvent.Transfer, PlaceX = 2.0, Line = new PressureLine(2.0, 0, 0, 0) },
        ];
        new FootSplit(plate, feet).Share();
        Assert.Equal(120, feet[0].Force[300 - feet[0].ForceStart], 1e-6);
        Assert.Equal(200, feet[1].Force[300 - feet[1].ForceStart], 1e-6);
        Assert.Equal(120, feet[0].Force[100 - feet[0].ForceStart], 1e-6);
        Assert.Equal(200, feet[1].Force[500 - feet[1].ForceStart], 1e-6);
    }

    /// <summary>What the feet of a plate carry sums to what the plate carries.</summary>
    [Fact]
    public void Nothing_is_lost_between_the_feet()
    {
        var samples = Tape.Walk(new HalfSineCow { Duty = 0.76, StrideSeconds = 1.8, StrideMetres = 1.2 }, 8);
        var crossing = Assert.Single(Tape.Analyse(samples).Crossings);
        var impulse = samples.Sum(cell => cell.Sum(kg => (double)kg)) / 200;
        Assert.Equal(impulse, crossing.Footfalls.Sum(footfall => footfall.CurveKg.Sum(kg => (double)kg) / footfall.CurveHz), 0.004 * impulse);
    }
}
