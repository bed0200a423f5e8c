namespace GaitWatch.Gait;

/// <summary>
/// Estimates how each foot's centre of pressure runs over its stance, from the parts of the stances in which the feet are alone.
/// </summary>
/// <remarks>
/// A hind foot is alone only at the beginning of its stance, the fore foot a stride ahead only at the end of its own, and in
/// between their places are needed to tell their loads apart. So the way of the pressure is learnt from all feet of the crossing
/// together (the first and the last foot on a plate show the whole of it) and each foot keeps its own place and some freedom
/// of its own: a linear least-squares fit with normal priors. The priors' figures are common practice, no source: a cow's
/// claw is about 13 cm long and the pressure runs over a part of it.
/// </remarks>
internal sealed class PressureTravel
{
    private const double MeanTravelMetres = 0.045;
    private const double TravelSpreadMetres = 0.02;
    private const double OwnTravelSpreadMetres = 0.01;
    private const double BendSpreadMetres = 0.03;
    private const double TwistSpreadMetres = 0.15;

    /// <summary>The travel of a foot that stands partly beyond an edge is cut off there; it follows nobody.</summary>
    private const double EdgeTravelSpreadMetres = 0.06;

    /// <summary>How well the place of a foot is known that presses from beyond an edge, metres.</summary>
    private const double HiddenSpreadMetres = 0.015;

    /// <summary>Before it is looked at a foot may stand anywhere, metres.</summary>
    private const double UnknownSpreadMetres = 10;

    /// <summary>How well a smooth line describes a real centre of pressure, metres.</summary>
    private const double ModelErrorMetres = 0.003;

    /// <summary>Error of a smoothed moment, kg m: cells of 0.5 kg noise at the ends of a plate.</summary>
    private const double MomentErrorKgMetres = 0.4;

    /// <summary>Samples nearer than this after smoothing say the same, seconds.</summary>
    private const double SpacingSeconds = 0.02;

    /// <summary>Kept away from another foot's coming and going, seconds: smoothing smears it.</summary>
    private const double GuardSeconds = 0.03;

    private const int SharedPerKind = 3;
    private readonly NormalEquations _equations;
    private readonly double[] _row;
    private readonly int _feet;

    private PressureTravel(int feet)
    {
        _feet = feet;
        _equations = new NormalEquations((2 * feet) + (2 * SharedPerKind));
        _row = new double[_equations.Size];
    }

    /// <summary>Number of parameters.</summary>
    public int Size => _equations.Size;

    /// <summary>Adds to a gradient over the parameters what a change of a foot's place at a stance phase contributes.</summary>
    public void AddRow(double[] gradient, FootOnPlate foot, double phase, double factor)
    {
        var shared = Shared(foot, _feet);
        gradient[2 * foot.Number] += factor;
        gradient[(2 * foot.Number) + 1] += factor * PressureLine.Straight(phase);
        gradient[shared] += factor * PressureLine.Straight(phase);
        gradient[shared + 1] += factor * PressureLine.Bent(phase);
        gradient[shared + 2] += factor * PressureLine.Twisted(phase);
    }

    /// <summary>Turns a gradient over the parameters into one over independent errors of 1: covariances are products of such.</summary>
    public void Whiten(double[] gradient) => _equations.Whiten(gradient);

    private static int Shared(FootOnPlate foot, int feet) => (2 * feet) + (foot.IsFore == true ? 0 : SharedPerKind);

    /// <summary>Fits the lines of all feet of a crossing and gives them to the feet.</summary>
    /// <param name="plates">Feet of each plate in order of landing, with the plate's signal.</param>
    public static PressureTravel Fit(params ReadOnlySpan<(PlateSignal Plate, List<FootOnPlate> Feet)> plates)
    {
        var feet = 0;
        foreach (var (_, list) in plates)
        {
            foreach (var foot in list)
                foot.Number = feet++;
        }

        var travel = new PressureTravel(feet);
        travel.AddShared();
        foreach (var (plate, list) in plates)
        {
            for (var k = 0; k < list.Count; k++)
                travel.Add(plate, list, k);
        }

        // The priors keep every place and travel finite, whatever the signal.
        if (!travel._equations.Solve())
            throw new InvalidOperationException("The plates' force or moment is not finite; recordings are cleaned of what is not before the feet are sought.");
        foreach (var (_, list) in plates)
        {
            foreach (var foot in list)
                foot.Line = travel.LineOf(foot);
        }

        return travel;
    }

    private PressureLine LineOf(FootOnPlate foot)
    {
        var solution = _equations.Solution;
        var shared = Shared(foot, _feet);
        return new(solution[2 * foot.Number], solution[shared] + solution[(2 * foot.Number) + 1], solution[shared + 1], solution[shared + 2]);
    }

    private void AddShared()
    {
        for (var kind = 0; kind < 2; kind++)
        {
            var at = (2 * _feet) + (kind * SharedPerKind);
            Prior(at, MeanTravelMetres, TravelSpreadMetres);
            Prior(at + 1, 0, BendSpreadMetres);
            Prior(at + 2, 0, TwistSpreadMetres);
        }
    }

    private void Prior(int at, double mean, double spread)
    {
        _row[at] = 1;
        _equations.Add(_row, mean, spread);
        _row[at] = 0;
    }

    private void Add(PlateSignal plate, List<FootOnPlate> list, int k)
    {
        var foot = list[k];
        Prior(2 * foot.Number, foot.PlaceX, foot.IsHidden ? HiddenSpreadMetres : UnknownSpreadMetres);
        Prior((2 * foot.Number) + 1, 0, foot.IsOnEdge ? EdgeTravelSpreadMetres : OwnTravelSpreadMetres);
        if (foot.IsHidden)
            return;
        var (from, to) = SinglePhase.Of(list, k);
        var guard = GuardSeconds / plate.Step;
        from += guard;
        to -= guard;
        var spacing = plate.Samples(SpacingSeconds);
        for (var i = Math.Max(0, (int)Math.Ceiling(from)); i <= to && i < plate.Count; i += spacing)
        {
            var force = plate.ForceKg[i];
            if (force <= 0)
                continue;
            Array.Clear(_row);
            AddRow(_row, foot, foot.PhaseAt(i), 1);
            var error = MomentErrorKgMetres / force;
            _equations.Add(_row, plate.MomentKgMetres[i] / force, Math.Sqrt((error * error) + (ModelErrorMetres * ModelErrorMetres)));
        }

        Array.Clear(_row);
    }
}
