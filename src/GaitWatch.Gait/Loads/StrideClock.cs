using MathNet.Numerics.LinearAlgebra;

namespace GaitWatch.Gait;

/// <summary>Her stride time at every moment of a crossing, inferred from all contacts and lifts together.</summary>
/// <remarks>
/// <para>Time is a smooth function of the number of strides done, t = f(n) = b n + c n^2: b is the stride time in the middle
/// of the crossing and 2c its change from a stride to the next. Every contact of a leg is one stride after that leg's last, and so
/// is every lift; left and right are half a stride apart but for a small offset of her own. So legs that land only once
/// are dated by the others. The swing lasts about 0.44 s at any speed (Flower F.C. et al. 2006, J Dairy Sci 89:2084-2092), so a lift follows the course
    /// of the contact after it, not its own moment's.</para>
/// <para>Linear least squares with normal priors on the change, the offsets, and (weakly) on the stance as part of the stride. The stride
/// centred on a moment n lasts f(n + 1/2) - f(n - 1/2) = b + 2cn.</para>
/// </remarks>
internal sealed class StrideClock
{
    /// <summary>Scatter of a contact or a lift about the smooth course, seconds: timing error and the unevenness of steps.</summary>
    private const double TimeErrorSeconds = 0.0055;

    /// <summary>Change of the stride time from a stride to the next, as part of it.</summary>
    private const double ChangeSpread = 0.08;

    /// <summary>How far right is from half a stride after left, in strides.</summary>
    private const double AsymmetrySpread = 0.02;

    /// <summary>Stance as part of the stride and its spread (contract: a walk has at least half; slow cows up to 0.78).</summary>
    private const double MeanDuty = 0.66;
    private const double DutySpread = 0.05;

    /// <summary>A parabola is not how she really changes her pace: error of the change beyond its scatter, as a part of it.</summary>
    private const double ChangeError = 0.06;

    /// <summary>The assumed scatter counts as this many times seen.</summary>
    private const double AssumedCount = 2;

    /// <summary>A foot over an edge nearer to the entry than this is over the entry edge, metres: plates are longer than twice this.</summary>
    private const double EntryMetres = 0.5;

    /// <summary>Groups of times that are whole strides apart: contacts and lifts of four legs.</summary>
    private const int Groups = 8;
    private const int FirstLift = 4;
    private const int Slope = Groups;
    private const int Change = Groups + 1;

    private readonly double _origin;
    private readonly double _swing;
    private readonly double _slope;
    private readonly double _change;
    private readonly Matrix<double> _covariance;

    private StrideClock(double origin, double swing, double slope, double change, Matrix<double> covariance)
    {
        _origin = origin;
        _swing = swing;
        _slope = slope;
        _change = change;
        _covariance = covariance;
    }

    /// <summary>Mean time a foot is in the air, seconds.</summary>
    public double SwingSeconds => _swing;

    /// <summary>
    /// Duration of the stride centred on a stance, seconds: the mean of that which the contacts tell at its contact and that which the
    /// lifts tell at its lift.
    /// </summary>
    public double StrideOf(double contact, double lift) => _slope + (2 * _change * NumberOf(contact, lift));

    /// <summary>Strides done since the middle of the crossing.</summary>
    private double StridesAt(double seconds)
    {
        var t = seconds - _origin;
        if (Math.Abs(_change) < 1e-9 * _slope)
            return t / _slope;
        var root = (_slope * _slope) + (4 * _change * t);
        return root <= 0 ? t / _slope : (Math.Sqrt(root) - _slope) / (2 * _change);
    }

    /// <summary>
    /// How the relative error of the stride time of a stance follows from those of the clock's two parameters: the row (1, 2n) / T,
    /// so that covariances between legs can be told.
    /// </summary>
    public (double Slope, double Change) Sensitivity(double contact, double lift)
    {
        var stride = StrideOf(contact, lift);
        return (1 / stride, 2 * NumberOf(contact, lift) / stride);
    }

    private double NumberOf(double contact, double lift) => 0.5 * (StridesAt(contact) + StridesAt(lift + _swing));

    /// <summary>Covariance of stride time and its change: slope-slope, slope-change, change-change, in seconds squared.</summary>
    public (double SlopeSlope, double SlopeChange, double ChangeChange) Covariance =>
        (_covariance[Slope, Slope], _covariance[Slope, Change], _covariance[Change, Change] + (ChangeError * ChangeError * _change * _change));

    /// <summary>Fits the clock to the feet.</summary>
    /// <param name="feet">Feet with a leg, in order of contact; those on an edge count, those not resolved do not.</param>
    /// <param name="step">Seconds a sample.</param>
    /// <returns>Null when no stride time can be told.</returns>
    public static StrideClock? Fit(IReadOnlyList<FootOnPlate> feet, double step)
    {
        var times = Times(feet, step);
        var stance = 0.0;
        foreach (var foot in feet)
            stance += (foot.Lift - foot.Contact) * step / feet.Count;
        if (times.Count < 4 || FirstGuess(feet, step, stance) is not { } guess)
            return null;
        var origin = 0.0;
        foreach (var time in times)
            origin += time.Seconds / times.Count;
        var clock = new StrideClock(origin, Math.Max(0, guess - stance), guess, 0, Matrix<double>.Build.Dense(Groups + 2, Groups + 2));
        for (var round = 0; round < 3; round++)
        {
            if (Refine(clock, times, stance) is not { } better)
                return null;
            clock = better;
        }

        return clock;
    }

    private static StrideClock? Refine(StrideClock clock, List<EventTime> times, double stance)
    {
        var normal = Matrix<double>.Build.Dense(Groups + 2, Groups + 2);
        var right = Vector<double>.Build.Dense(Groups + 2);
        var numbersOf = new List<(double Number, double Done)>(times.Count);
        var references = new double?[Groups];
        Span<int> columns = stackalloc int[3];
        Span<double> row = stackalloc double[3];
        foreach (var (seconds, group, weight) in times)
        {
            // The swing lasts alike whatever the speed, so a lift goes with the contact that follows it.
            var done = clock.StridesAt(group >= FirstLift ? seconds + clock._swing : seconds);
            // The pair's first event numbers the pair: whole strides for the same side, half strides for the other.
            var pair = group & ~1;
            if (references[pair] is not { } reference)
            {
                references[pair] = reference = done - (0.5 * (group & 1));
            }

            var half = 0.5 * (group & 1);
            var number = Math.Round(done - reference - half) + half;
            numbersOf.Add((number, done));
            columns[0] = group;
            columns[1] = Slope;
            columns[2] = Change;
            row[0] = 1;
            row[1] = number;
            row[2] = done * done;
            Add(columns, row, seconds - clock._origin, weight / TimeErrorSeconds);
        }

        for (var group = 0; group < Groups; group++)
            normal[group, group] += 1e-9;
        // Left and right of a pair start alike once the half strides are counted.
        var asymmetry = AsymmetrySpread * clock._slope;
        for (var pair = 0; pair < Groups; pair += 2)
        {
            columns[0] = pair;
            columns[1] = pair + 1;
            row[0] = 1;
            row[1] = -1;
            Add(columns[..2], row[..2], 0, 1 / asymmetry);
        }

        normal[Change, Change] += 1 / (0.25 * ChangeSpread * ChangeSpread * clock._slope * clock._slope);
        var dutyError = DutySpread / MeanDuty * clock._slope;
        normal[Slope, Slope] += 1 / (dutyError * dutyError);
        right[Slope] += stance / MeanDuty / (dutyError * dutyError);

        if (NormalMatrix.Covariance(normal) is not { } covariance)
            return null;
        var solution = covariance * right;
        var slope = solution[Slope];
        if (!(slope is > 0.2 and < 10) || !(Math.Abs(solution[Change]) < 0.25 * slope))
            return null;
        covariance *= Scatter(clock, times, numbersOf, solution);
        return new StrideClock(clock._origin, Math.Max(0, slope - stance), slope, solution[Change], covariance);

        void Add(ReadOnlySpan<int> at, ReadOnlySpan<double> values, double target, double weight)
        {
            for (var a = 0; a < at.Length; a++)
            {
                right[at[a]] += weight * weight * values[a] * target;
                for (var b = 0; b < at.Length; b++)
                    normal[at[a], at[b]] += weight * weight * values[a] * values[b];
            }
        }
    }

    /// <summary>
    /// How much the times scatter about the course against what is assumed, as a variance ratio. With so few times the assumption
    /// counts as some of them.
    /// </summary>
    private static double Scatter(StrideClock clock, List<EventTime> times, List<(double Number, double Done)> numbers, Vector<double> solution)
    {
        var squares = AssumedCount;
        var groups = new HashSet<int>();
        for (var k = 0; k < times.Count; k++)
        {
            var (seconds, group, weight) = times[k];
            var course = solution[group] + (solution[Slope] * numbers[k].Number) + (solution[Change] * numbers[k].Done * numbers[k].Done);
            var residual = (seconds - clock._origin - course) * weight / TimeErrorSeconds;
            squares += residual * residual;
            groups.Add(group);
        }

        // Left and right share their offset all but wholly, so a pair of groups counts as one.
        var free = Math.Max(0, times.Count - (0.5 * groups.Count) - 2);
        return squares / (AssumedCount + free);
    }

    private static List<EventTime> Times(IReadOnlyList<FootOnPlate> feet, double step)
    {
        var times = new List<EventTime>();
        foreach (var foot in feet)
        {
            if (foot.Leg is not { } leg || !foot.IsResolved || foot.IsHidden)
                continue;
            // Contacts LF, RF, LH, RH are groups 0 to 3, lifts 4 to 7. Over the entry edge the pressure rolls onto the plate late in the
            // stance, over the exit edge it rolls off early: the one's contact and the other's lift are not seen.
            var (overEntry, overExit) = (foot.IsOnEdge && foot.PlaceX < EntryMetres, foot.IsOnEdge && foot.PlaceX >= EntryMetres);
            if (!overEntry)
                times.Add(new EventTime(foot.Contact * step, (int)leg, Weight(foot, foot.ContactEvent)));
            if (!overExit)
                times.Add(new EventTime(foot.Lift * step, FirstLift + (int)leg, Weight(foot, foot.LiftEvent)));
        }

        return times;
    }

    /// <summary>A swap's times are laid out, not seen; a foot over an edge carries too little to see well when it comes and goes.</summary>
    private static double Weight(FootOnPlate foot, FootEvent how) => foot.IsOnEdge ? 0.5 : how == FootEvent.Swap ? 0.6 : 1;

    /// <summary>A first stride time: the median time between contacts of a leg, else from the stances.</summary>
    private static double? FirstGuess(IReadOnlyList<FootOnPlate> feet, double step, double stance)
    {
        var same = new List<double>();
        for (var i = 0; i < feet.Count; i++)
        {
            for (var j = i + 1; j < feet.Count; j++)
            {
                if (feet[i].Leg is null || feet[i].Leg != feet[j].Leg)
                    continue;
                same.Add((feet[j].Contact - feet[i].Contact) * step);
                break;
            }
        }

        var byStance = stance / MeanDuty;
        if (!(byStance > 0))
            return null;
        if (same.Count == 0)
            return byStance;
        same.Sort();
        var median = same[same.Count / 2];
        // A foot that was missed between two makes one interval of two strides.
        return median / Math.Max(1, Math.Round(median / byStance));
    }

    private readonly record struct EventTime(double Seconds, int Group, double Weight);
}
