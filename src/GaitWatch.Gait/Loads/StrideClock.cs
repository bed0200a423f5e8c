namespace GaitWatch.Gait;

/// <summary>Her stride time at every moment of a crossing, inferred from all contacts and lifts together.</summary>
/// <remarks>
/// <para>Stride time is a course over the strides done that changes evenly and wanders about that (<see cref="PaceCourse"/>). Every contact of a leg is one
/// stride after that leg's last; left and right are half a stride apart, fore and hind a quarter, but for small offsets of her own. So
/// legs that land only once are dated by the others.</para>
/// <para>A lift follows its contact by the stance. Of a cow whose swing lasts alike at any speed (about 0.44 s: Flower F.C. et al. 2006,
/// J Dairy Sci 89:2084-2092) the stance ends a swing before the next contact; of one that stands for the same part of each stride it ends
/// at that part. So a lift is seen as some part of a stride after its contact, less a constant.</para>
/// <para>How much her pace wanders, how well the times are seen and which part that is differ from crossing to crossing (<see cref="ClockTrial"/>);
/// the mean over all of them is taken, each as likely as the times make it, and their differences are part of the error.</para>
/// <para>The stride centred on a stance is half the time from the middle of the stance before to that of the stance after.</para>
/// </remarks>
internal sealed class StrideClock
{
    /// <summary>A foot over an edge nearer to the entry than this is over the entry edge, metres: plates are longer than twice this.</summary>
    private const double EntryMetres = 0.5;

    /// <summary>
    /// How much a contact or a lift that is seen well scatters from stance to stance of a leg, seconds: so much shows on plates that even walks
    /// were simulated on.
    /// </summary>
    private const double SeenSeconds = 0.003;

    /// <summary>Groups of times that are whole strides apart: contacts and lifts of four legs.</summary>
    private const int FirstLift = ClockFit.FirstLift;

    private readonly double _origin;
    private readonly double _stance;
    private readonly double _stancePart;
    private readonly PaceCourse _course;
    private readonly double[,] _covariance;

    /// <param name="origin">Seconds at which no stride is done.</param>
    /// <param name="stance">Mean time a foot is on the ground, seconds.</param>
    /// <param name="stancePart">Strides after its contact by which a lift is told.</param>
    /// <param name="course">Stride time over the strides done.</param>
    /// <param name="covariance">Of the stride times at its knots, seconds squared.</param>
    /// <param name="timeError">Scatter of contacts and lifts about the course, seconds.</param>
    public StrideClock(double origin, double stance, double stancePart, PaceCourse course, double[,] covariance, double timeError)
    {
        UnevenSeconds = Math.Sqrt(Math.Max(0, (timeError * timeError) - (SeenSeconds * SeenSeconds)));
        _origin = origin;
        _stance = stance;
        _stancePart = stancePart;
        _course = course;
        _covariance = covariance;
    }

    /// <summary>How uneven her steps are: scatter of contacts and lifts about the course beyond what they are seen by, seconds.</summary>
    public double UnevenSeconds { get; }

    /// <summary>Mean time a foot is on the ground, seconds.</summary>
    public double StanceSeconds => _stance;

    /// <summary>Mean time a foot is in the air, seconds.</summary>
    public double SwingSeconds => Math.Max(0, _course.Mean - _stance);

    /// <summary>Parameters on which a stride time depends.</summary>
    public int Parameters => _course.Knots;

    /// <summary>Duration of the stride centred on the stance that begins at a contact, seconds.</summary>
    public double StrideOf(double contact)
    {
        Span<double> row = stackalloc double[Parameters];
        return StrideOf(contact, row);
    }

    /// <summary>Relative change of the stride time at a moment, from the half stride before it to the one after: d ln T / dt, per second.</summary>
    public double ChangePerSecond(double seconds)
    {
        var n = _course.StridesAt(seconds - _origin);
        var (before, after) = (_course.Seconds(n - 0.5, n), _course.Seconds(n, n + 0.5));
        return 2 * (after - before) / ((before + after) * (0.5 * (before + after)));
    }

    /// <summary>How the relative error of the stride time of a stance follows from those of the parameters: d ln T / d parameter.</summary>
    public void Sensitivity(double contact, Span<double> of)
    {
        var stride = StrideOf(contact, of);
        for (var p = 0; p < of.Length; p++)
            of[p] /= stride;
    }

    /// <summary>Covariance of two of the parameters, seconds squared.</summary>
    public double Covariance(int first, int second) => _covariance[first, second];

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
        double origin = 0, first = double.MaxValue, last = double.MinValue;
        foreach (var time in times)
        {
            origin += time.Seconds / times.Count;
            first = Math.Min(first, time.Seconds);
            last = Math.Max(last, time.Seconds);
        }

        // The stride centred on the first stance begins half of the rest of the stride before its contact, on the last it ends so much after.
        if (PaceCourse.Even(((first - origin) / guess) - 1, ((last - origin) / guess) + 1.4, guess) is not { } even)
            return null;
        return new ClockFit(times, origin, stance, even).Mean();
    }

    /// <summary>The stride's length, and in the row how it is made of the parameters.</summary>
    private double StrideOf(double contact, Span<double> row)
    {
        row.Clear();
        var n = _course.StridesAt(contact - _origin);
        _course.AddTime(row, n - 1, n + 1, 0.25);
        _course.AddTime(row, n + _stancePart - 1, n + _stancePart + 1, 0.25);
        return _course.Sum(row);
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
                times.Add(new EventTime(foot.Contact * step, (int)leg, Weight(foot, foot.ContactEvent), foot.Contact * step));
            if (!overExit)
                times.Add(new EventTime(foot.Lift * step, FirstLift + (int)leg, Weight(foot, foot.LiftEvent), overEntry ? null : foot.Contact * step));
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

        var byStance = stance / ClockFit.MeanDuty;
        if (!(byStance > 0))
            return null;
        if (same.Count == 0)
            return byStance;
        same.Sort();
        var median = same[same.Count / 2];
        // A foot that was missed between two makes one interval of two strides.
        return median / Math.Max(1, Math.Round(median / byStance));
    }
}
