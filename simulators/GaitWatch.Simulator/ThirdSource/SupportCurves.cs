namespace GaitWatch.Simulator;

/// <summary>
/// How a foot takes up, carries and gives off its load: points as read from a drawing of the published shapes (Scott G.B. 1988, Vet Rec 123:245-248: in front
/// one peak about half way; behind two, at about 1/4 and 3/4 of the stance, the second slightly smaller), joined smoothly. Each foot has
/// points of its own, and no two footfalls quite the same.
/// </summary>
internal sealed class SupportCurves
{
    /// <summary>Footfall to footfall the points differ by so much of the peak (invented).</summary>
    private const double FootfallScatter = 0.012;

    private readonly (double U, double Y)[] _points;
    private readonly bool _isFore;

    private SupportCurves(bool isFore, (double U, double Y)[] points) => (_isFore, _points) = (isFore, points);

    /// <summary>A foot's way of carrying. Peaks are at most 1; the other heights are invented between.</summary>
    public static SupportCurves Draw(SeededRandom random, bool isFore) => isFore
        ? new(true,
        [
            (0, 0), (random.Uniform(0.07, 0.11), random.Uniform(0.44, 0.54)), (random.Uniform(0.23, 0.28), random.Uniform(0.80, 0.87)),
            (random.Uniform(0.44, 0.56), 1), (random.Uniform(0.72, 0.77), random.Uniform(0.80, 0.87)), (random.Uniform(0.89, 0.93), random.Uniform(0.44, 0.54)), (1, 0),
        ])
        : new(false,
        [
            (0, 0), (random.Uniform(0.07, 0.11), random.Uniform(0.52, 0.64)), (random.Uniform(0.22, 0.28), 1),
            (random.Uniform(0.46, 0.54), random.Uniform(0.80, 0.88)), (random.Uniform(0.72, 0.78), random.Uniform(0.92, 0.98)), (random.Uniform(0.89, 0.93), random.Uniform(0.50, 0.62)), (1, 0),
        ]);

    /// <summary>One footfall's curve: over the stance from 0 to 1.</summary>
    public KnotCurve Footfall(SeededRandom random) => new(
    [
        .. _points.Select((point, k) => k == 0 || k == _points.Length - 1 || (_isFore && k == 3)
            ? point
            : (point.U, point.Y + random.Normal(0, FootfallScatter, -0.025, 0.025))),
    ]);
}
