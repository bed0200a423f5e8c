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
    /// <summary>No two feet roll alike: the twist of one differs from that of its kind by 2.5 mm at heel and toe.</summary>
    private const double OwnTwistSpreadMetres = 0.05;

    private const double BendSpreadMetres = 0.03;
    private const double TwistSpreadMetres = 0.15;

    /// <summary>The pressure lingers over heel and toe: parts of fourth and fifth degree, metres at the ends of a stance.</summary>
    private const double LingerSpreadMetres = 0.004;

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

    /// <summary>So many samples are summed up to tell what is left of the moment: 0.1 s, a period of what the low-pass lets through.</summary>
    private const int SumLength = 5;

    /// <summary>Place, travel and twist of each foot of its own.</summary>
    private const int PerFoot = 3;

    /// <summary>Travel, bend, twist and the lingering over heel and toe, of all fore feet and of all hind feet.</summary>
    private const int SharedPerKind = 5;
    private readonly NormalEquations _equations;
    private readonly double[] _row;
    private readonly int _feet;
    private double _misfit = 1;

    private PressureTravel(int feet)
    {
        _feet = feet;
        _equations = new NormalEquations((PerFoot * feet) + (2 * SharedPerKind));
        _row = new double[_equations.Size];
    }

    /// <summary>Number of parameters.</summary>
    public int Size => _equations.Size;

    /// <summary>Adds to a gradient over the parameters what a change of a foot's place at a stance phase contributes.</summary>
    public void AddRow(double[] gradient, FootOnPlate foot, double phase, double factor)
    {
        var shared = Shared(foot, _feet);
        gradient[PerFoot * foot.Number] += factor;
        gradient[(PerFoot * foot.Number) + 1] += factor * PressureLine.Straight(phase);
        gradient[(PerFoot * foot.Number) + 2] += factor * PressureLine.Twisted(phase);
        gradient[shared] += factor * PressureLine.Straight(phase);
        gradient[shared + 1] += factor * PressureLine.Bent(phase);
        gradient[shared + 2] += factor * PressureLine.Twisted(phase);
        gradient[shared + 3] += factor * PressureLine.OfFourth(phase);
        gradient[shared + 4] += factor * PressureLine.OfFifth(phase);
    }

    /// <summary>Turns a gradient over the parameters into one over independent errors of 1: covariances are products of such.</summary>
    public void Whiten(double[] gradient)
    {
        _equations.Whiten(gradient);
        // The errors are what this crossing shows them to be.
        var scale = Math.Sqrt(_misfit);
        for (var k = 0; k < gradient.Length; k++)
            gradient[k] *= scale;
    }

    private static int Shared(FootOnPlate foot, int feet) => (PerFoot * feet) + (foot.IsFore == true ? 0 : SharedPerKind);

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

        travel._misfit = MisfitOf(plates);
        return travel;
    }

    /// <summary>
    /// How many times larger than taken for granted the squared errors of the places are, as the crossing itself shows it: what is left of the
    /// moment after the fit, in sums over as long as it keeps its sign; never below 1, for the fit follows a part of them.
    /// </summary>
    private static double MisfitOf(ReadOnlySpan<(PlateSignal Plate, List<FootOnPlate> Feet)> plates)
    {
        double squares = 0;
        var samples = 0;
        foreach (var (plate, list) in plates)
        {
            for (var k = 0; k < list.Count; k++)
            {
                if (list[k].IsHidden)
                    continue;
                double sum = 0;
                var summed = 0;
                foreach (var i in Alone(plate, list, k))
                {
                    if (plate.ForceKg[i] <= 0)
                        continue;
                    sum += (plate.PressureX(i) - list[k].XAt(i)) / ErrorAt(plate, i);
                    if (++summed % SumLength != 0)
                        continue;
                    squares += sum * sum;
                    samples += SumLength;
                    sum = 0;
                }
            }
        }

        return Math.Max(1, squares / Math.Max(1, samples));
    }

    /// <summary>The samples by which a foot's place is told: it is alone, and they lie far enough apart.</summary>
    private static IEnumerable<int> Alone(PlateSignal plate, List<FootOnPlate> list, int k)
    {
        var (from, to) = SinglePhase.Of(list, k);
        var guard = GuardSeconds / plate.Step;
        var spacing = plate.Samples(SpacingSeconds);
        for (var i = Math.Max(0, (int)Math.Ceiling(from + guard)); i <= to - guard && i < plate.Count; i += spacing)
            yield return i;
    }

    /// <summary>Error of a centre of pressure, metres.</summary>
    private static double ErrorAt(PlateSignal plate, int i)
    {
        var error = MomentErrorKgMetres / plate.ForceKg[i];
        return Math.Sqrt((error * error) + (ModelErrorMetres * ModelErrorMetres));
    }

    private PressureLine LineOf(FootOnPlate foot)
    {
        var solution = _equations.Solution;
        var shared = Shared(foot, _feet);
        return new(solution[PerFoot * foot.Number], solution[shared] + solution[(PerFoot * foot.Number) + 1], solution[shared + 1], solution[shared + 2] + solution[(PerFoot * foot.Number) + 2], solution[shared + 3], solution[shared + 4]);
    }

    private void AddShared()
    {
        for (var kind = 0; kind < 2; kind++)
        {
            var at = (PerFoot * _feet) + (kind * SharedPerKind);
            Prior(at, MeanTravelMetres, TravelSpreadMetres);
            Prior(at + 1, 0, BendSpreadMetres);
            Prior(at + 2, 0, TwistSpreadMetres);
            Prior(at + 3, 0, LingerSpreadMetres);
            Prior(at + 4, 0, LingerSpreadMetres);
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
        Prior(PerFoot * foot.Number, foot.PlaceX, foot.IsHidden ? HiddenSpreadMetres : UnknownSpreadMetres);
        Prior((PerFoot * foot.Number) + 1, 0, foot.IsOnEdge ? EdgeTravelSpreadMetres : OwnTravelSpreadMetres);
        Prior((PerFoot * foot.Number) + 2, 0, OwnTwistSpreadMetres);
        if (foot.IsHidden)
            return;
        foreach (var i in Alone(plate, list, k))
        {
            if (plate.ForceKg[i] <= 0)
                continue;
            Array.Clear(_row);
            AddRow(_row, foot, foot.PhaseAt(i), 1);
            _equations.Add(_row, plate.PressureX(i), ErrorAt(plate, i));
        }

        Array.Clear(_row);
    }
}
