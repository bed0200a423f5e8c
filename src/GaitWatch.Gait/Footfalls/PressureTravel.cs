using MathNet.Numerics.LinearAlgebra;

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

    /// <summary>How well a smooth line describes a real centre of pressure, metres.</summary>
    private const double ModelErrorMetres = 0.003;

    /// <summary>Error of a smoothed moment, kg m: cells of 0.5 kg noise at the ends of a plate.</summary>
    private const double MomentErrorKgMetres = 0.4;

    /// <summary>Samples nearer than this after smoothing say the same, seconds.</summary>
    private const double SpacingSeconds = 0.02;

    /// <summary>Kept away from another foot's coming and going, seconds: smoothing smears it.</summary>
    private const double GuardSeconds = 0.03;

    private const int SharedPerKind = 3;
    private readonly double[,] _covariance;
    private readonly int _feet;

    private PressureTravel(double[,] covariance, int feet)
    {
        _covariance = covariance;
        _feet = feet;
    }

    /// <summary>Number of parameters.</summary>
    public int Size => _covariance.GetLength(0);

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

    /// <summary>Covariance of two figures that depend on the parameters by these gradients.</summary>
    public double Covariance(double[] first, double[] second)
    {
        var sum = 0.0;
        for (var a = 0; a < first.Length; a++)
        {
            if (first[a] == 0)
                continue;
            for (var b = 0; b < second.Length; b++)
                sum += first[a] * second[b] * _covariance[a, b];
        }

        return sum;
    }

    private static int Shared(FootOnPlate foot, int feet) => (2 * feet) + (foot.IsFore == true ? 0 : SharedPerKind);

    /// <summary>Fits the lines of all feet of a crossing and gives them to the feet.</summary>
    /// <param name="plates">Feet of each plate in order of landing, with the plate's signal.</param>
    public static PressureTravel Fit(params ReadOnlySpan<(PlateSignal Plate, List<FootOnPlate> Feet)> plates)
    {
        var feet = 0;
        foreach (var (_, list) in plates)
            feet += list.Count;
        var size = (2 * feet) + (2 * SharedPerKind);
        var normal = new double[size, size];
        var right = new double[size];
        for (var kind = 0; kind < 2; kind++)
        {
            var at = (2 * feet) + (kind * SharedPerKind);
            Prior(at, MeanTravelMetres, TravelSpreadMetres);
            Prior(at + 1, 0, BendSpreadMetres);
            Prior(at + 2, 0, TwistSpreadMetres);
        }

        var index = 0;
        foreach (var (plate, list) in plates)
        {
            for (var k = 0; k < list.Count; k++, index++)
            {
                Prior(2 * index, list[k].PlaceX, list[k].IsHidden ? HiddenSpreadMetres : 10);
                Prior((2 * index) + 1, 0, list[k].IsOnEdge ? EdgeTravelSpreadMetres : OwnTravelSpreadMetres);
                if (!list[k].IsHidden)
                    Observe(plate, list, k, index);
            }
        }

        // The priors keep every place and travel finite, whatever the signal.
        var covariance = NormalMatrix.Covariance(Matrix<double>.Build.DenseOfArray(normal))
            ?? throw new InvalidOperationException("The plates' force or moment is not finite; recordings are cleaned of what is not before the feet are sought.");
        var solution = covariance * Vector<double>.Build.Dense(right);
        index = 0;
        foreach (var (_, list) in plates)
        {
            foreach (var foot in list)
            {
                foot.Number = index;
                var shared = Shared(foot, feet);
                foot.Line = new PressureLine(
                    solution[2 * index], solution[shared] + solution[(2 * index) + 1], solution[shared + 1], solution[shared + 2]);
                index++;
            }
        }

        return new PressureTravel(covariance.ToArray(), feet);

        void Prior(int at, double mean, double spread)
        {
            normal[at, at] += 1 / (spread * spread);
            right[at] += mean / (spread * spread);
        }

        void Observe(PlateSignal plate, List<FootOnPlate> list, int k, int foot)
        {
            var (from, to) = SinglePhase.Of(list, k);
            var guard = GuardSeconds / plate.Step;
            from += guard;
            to -= guard;
            var spacing = plate.Samples(SpacingSeconds);
            var shared = Shared(list[k], feet);
            Span<int> columns = [2 * foot, (2 * foot) + 1, shared, shared + 1, shared + 2];
            Span<double> row = stackalloc double[5];
            for (var i = Math.Max(0, (int)Math.Ceiling(from)); i <= to && i < plate.Count; i += spacing)
            {
                var force = plate.ForceKg[i];
                if (force <= 0)
                    continue;
                var phase = list[k].PhaseAt(i);
                var error = MomentErrorKgMetres / force;
                var weight = 1 / ((error * error) + (ModelErrorMetres * ModelErrorMetres));
                row[0] = 1;
                row[1] = PressureLine.Straight(phase);
                row[2] = row[1];
                row[3] = PressureLine.Bent(phase);
                row[4] = PressureLine.Twisted(phase);
                var x = plate.MomentKgMetres[i] / force;
                for (var a = 0; a < row.Length; a++)
                {
                    right[columns[a]] += weight * row[a] * x;
                    for (var b = 0; b < row.Length; b++)
                        normal[columns[a], columns[b]] += weight * row[a] * row[b];
                }
            }
        }
    }
}
