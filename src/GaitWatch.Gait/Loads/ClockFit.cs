namespace GaitWatch.Gait;

/// <summary>Fits the course of the stride time to contacts and lifts: linear least squares with normal priors, over all trials.</summary>
internal sealed class ClockFit
{
    /// <summary>Groups of times that are whole strides apart: contacts and lifts of four legs. Each has an offset of its own.</summary>
    private const int Groups = 8;

    /// <summary>The first group of lifts.</summary>
    public const int FirstLift = 4;

    private const int Change = Groups;
    private const int FirstKnot = Groups + 1;

    /// <summary>Even change of the stride time from a stride to the next, as part of it.</summary>
    private const double ChangeSpread = 0.03;

    /// <summary>How far right is from half a stride after left, in strides.</summary>
    private const double AsymmetrySpread = 0.015;

    /// <summary>Stance as part of the stride (contract: a walk has at least half; slow cows up to 0.78).</summary>
    public const double MeanDuty = 0.66;

    /// <summary>Its spread.</summary>
    private const double DutySpread = 0.05;

    /// <summary>Most cows walk evenly and plates are mostly quiet: a trial is the less likely beforehand the larger its figures, by this power.</summary>
    private const double EvennessPower = 0.5;

    private readonly List<EventTime> _times;
    private readonly double _origin;
    private readonly double _stance;
    private readonly double[] _row;
    private readonly double[] _done;
    private readonly NormalEquations _fixed;
    private readonly NormalEquations _wandering;
    private readonly NormalEquations _seen;
    private readonly NormalEquations _all;
    private readonly NormalEquations _ofCourse;
    private readonly NormalEquations _ofTrial;
    private PaceCourse _course;

    /// <param name="times">Contacts and lifts.</param>
    /// <param name="origin">Seconds at which no stride is done.</param>
    /// <param name="stance">Mean time a foot is on the ground, seconds.</param>
    /// <param name="course">A first course.</param>
    public ClockFit(List<EventTime> times, double origin, double stance, PaceCourse course)
    {
        _times = times;
        _origin = origin;
        _stance = stance;
        _course = course;
        var size = FirstKnot + course.Knots;
        (_fixed, _seen, _all) = (new NormalEquations(size), new NormalEquations(size), new NormalEquations(size));
        // The offsets of the groups are eliminated once for all trials that differ in nothing else than how much the pace wanders.
        (_wandering, _ofCourse, _ofTrial) = (new NormalEquations(size - Groups), new NormalEquations(size - Groups), new NormalEquations(size - Groups));
        _row = new double[size];
        _done = new double[times.Count];
    }

    /// <summary>The mean over all trials; null when the times make no walk.</summary>
    public StrideClock? Mean()
    {
        // Where in their strides the events lie is told by the course, so it is drawn twice roughly first.
        var rough = new ClockTrial(ClockTrial.Wanderings[1], ClockTrial.TimeErrors[1], ClockTrial.StanceParts[1]);
        for (var round = 0; round < 2; round++)
        {
            Prepare();
            See(rough.StancePart);
            if (!Place(rough.TimeError) || !Solve(rough.Wandering) || _course.With(_ofTrial.Solution.AsSpan(1)) is not { } course)
                return null;
            _course = course;
        }

        Prepare();
        var mean = new ClockMean(_course.Knots);
        foreach (var part in ClockTrial.StanceParts)
        {
            See(part);
            foreach (var error in ClockTrial.TimeErrors)
            {
                if (!Place(error))
                    continue;
                foreach (var wandering in ClockTrial.Wanderings)
                {
                    var trial = new ClockTrial(wandering, error, part);
                    if (Solve(wandering))
                        mean.Add(trial, LogLikelihood(trial), _ofTrial);
                }
            }
        }

        return mean.Strides is { } strides && _course.With(strides) is { } meanCourse
            ? new StrideClock(_origin, _stance, mean.StancePart, meanCourse, mean.Covariance(), mean.TimeError)
            : null;
    }

    /// <summary>Of the times, all unknowns integrated out, but for a constant.</summary>
    private double LogLikelihood(ClockTrial trial) =>
        -(0.5 * (_ofTrial.Left + _ofTrial.LogDeterminant)) - ((_course.Knots - 1 + EvennessPower) * Math.Log(trial.Wandering)) - ((_times.Count + EvennessPower) * Math.Log(trial.TimeError));

    /// <summary>What is known beforehand and what is seen with an error, the groups' offsets eliminated.</summary>
    private bool Place(double timeError)
    {
        _all.Become(_fixed);
        _all.Add(_seen, 1 / (timeError * timeError));
        return _all.Eliminate(_ofCourse);
    }

    private bool Solve(double wandering)
    {
        _ofTrial.Become(_ofCourse);
        _ofTrial.Add(_wandering, 1 / (wandering * wandering));
        return _ofTrial.Solve();
    }

    /// <summary>Numbers the events by the present course and lays down what is known beforehand.</summary>
    private void Prepare()
    {
        Number();
        var mean = _course.Mean;
        _fixed.Clear();
        for (var group = 0; group < Groups; group++)
            One(group, 0, mean);
        // Left and right of a pair are half a stride apart; their own offsets are small.
        for (var pair = 0; pair < Groups; pair += 2)
        {
            Array.Clear(_row);
            _row[pair] = 1;
            _row[pair + 1] = -1;
            _fixed.Add(_row, 0, AsymmetrySpread * mean);
        }

        One(Change, 0, ChangeSpread * mean);
        var middle = Math.Clamp((int)Math.Round(-_course.First / PaceCourse.Spacing), 0, _course.Knots - 1);
        One(FirstKnot + middle, _stance / MeanDuty, DutySpread / MeanDuty * mean);
        _wandering.Clear();
        for (var k = FirstKnot; k + 1 < _row.Length; k++)
        {
            Array.Clear(_row);
            _row[k] = -1;
            _row[k + 1] = 1;
            _row[Change] = -PaceCourse.Spacing;
            _wandering.Add(_row.AsSpan(Groups), 0, mean * Math.Sqrt(PaceCourse.Spacing));
        }
    }

    private void One(int at, double value, double spread)
    {
        Array.Clear(_row);
        _row[at] = 1;
        _fixed.Add(_row, value, spread);
    }

    /// <summary>Lays down what is seen, each time with an error of 1 second.</summary>
    private void See(double stancePart)
    {
        _seen.Clear();
        for (var k = 0; k < _times.Count; k++)
        {
            var (seconds, group, weight, _) = _times[k];
            Array.Clear(_row);
            _row[group] = 1;
            _course.AddTime(_row.AsSpan(FirstKnot), 0, _done[k] + (group >= FirstLift ? stancePart : 0), 1);
            _seen.Add(_row, seconds - _origin, 1 / weight);
        }
    }

    /// <summary>Numbers every event by the strides done at its contact: those of a leg lie whole strides apart, left and right half ones.</summary>
    private void Number()
    {
        Span<double> reference = stackalloc double[Groups];
        Span<double> sum = stackalloc double[Groups];
        Span<int> count = stackalloc int[Groups];
        for (var k = 0; k < _times.Count; k++)
        {
            var (seconds, group, _, contact) = _times[k];
            // A lift is numbered by the contact before it.
            var done = _course.StridesAt((contact ?? (seconds - _stance)) - _origin);
            var pair = group & ~1;
            var half = 0.5 * (group & 1);
            if (count[pair] == 0)
                reference[pair] = done - half;
            _done[k] = Math.Round(done - reference[pair] - half) + half;
            sum[pair] += done - _done[k];
            count[pair]++;
        }

        for (var k = 0; k < _times.Count; k++)
        {
            var pair = _times[k].Group & ~1;
            _done[k] += sum[pair] / count[pair];
        }
    }
}
