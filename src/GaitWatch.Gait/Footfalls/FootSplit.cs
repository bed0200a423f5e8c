namespace GaitWatch.Gait;

/// <summary>Splits a plate's load between its feet.</summary>
/// <remarks>
/// One foot alone carries all. Two feet at known places x1, x2 are told apart by F1 + F2 = F and F1 x1 + F2 x2 = M. Two feet on one
/// spot, one leaving while the other comes down, are parted along straight lines laid through the fall before and the
/// rise after.
/// </remarks>
internal sealed class FootSplit
{
    /// <summary>Two feet nearer than this are not told apart by the moment, metres.</summary>
    private const double LeastApartMetres = 0.25;

    /// <summary>
    /// So much of the toes of feet that come and go alone is taken for one that follows another on the spot: the lines are laid through the sum of
    /// two feet, whose steepest part is a little less far up. How much less was set so that half-sine feet, whose times are known, keep theirs within 2 ms;
    /// the simulated sources by themselves would ask for none of it at contact.
    /// </summary>
    private const double ToePart = 0.75;

    /// <summary>Longer than any foot takes to bear its load along a straight line, seconds.</summary>
    private const double LongestToeSeconds = 0.05;

    /// <summary>A foot beyond an edge presses when it seems to carry this much, as part of the plate's highest load and at least in kg.</summary>
    private const double HiddenMark = 0.02;
    private const double HiddenMarkKg = 3;

    private readonly PlateSignal _plate;
    private readonly List<FootOnPlate> _feet;
    private readonly double _highest;
    private readonly SwapLines?[] _swaps;

    public FootSplit(PlateSignal plate, List<FootOnPlate> feet)
    {
        _plate = plate;
        _feet = feet;
        _highest = 0;
        foreach (var kg in plate.ForceKg)
            _highest = Math.Max(_highest, kg);
        _swaps = new SwapLines?[feet.Count];
    }

    /// <summary>Sets contacts and lifts from the present places of the feet.</summary>
    public void Time()
    {
        for (var k = 0; k < _feet.Count; k++)
        {
            var foot = _feet[k];
            if (foot.ContactEvent == FootEvent.Alone)
                TimeAloneContact(k);
            if (foot.LiftEvent == FootEvent.Alone)
                TimeAloneLift(k);
            if (k + 1 >= _feet.Count)
                continue;
            if (foot.LiftEvent == FootEvent.Transfer)
                TimeTransfer(k);
            else if (foot.LiftEvent == FootEvent.Swap)
                TimeSwap(k);
        }
    }

    /// <summary>Gives every foot its force, impulse and peak.</summary>
    public void Share()
    {
        for (var k = 0; k < _feet.Count; k++)
            Share(k);
    }

    private void TimeAloneContact(int k)
    {
        var inside = (int)Math.Clamp(_feet[k].Contact + (0.25 * (_feet[k].Lift - _feet[k].Contact)), 0, _plate.Count - 1);
        var outermost = k > 0 ? (int)Math.Clamp(_feet[k - 1].Middle, 0, inside) : 0;
        if (outermost < inside && FootTimes.Edge(Load, inside, outermost, _highest, _plate.Hz) is { } contact)
            _feet[k].Contact = contact;
    }

    private void TimeAloneLift(int k)
    {
        var inside = (int)Math.Clamp(_feet[k].Lift - (0.25 * (_feet[k].Lift - _feet[k].Contact)), 0, _plate.Count - 1);
        var outermost = k + 1 < _feet.Count ? (int)Math.Clamp(_feet[k + 1].Middle, inside, _plate.Count - 1) : _plate.Count - 1;
        if (outermost > inside && FootTimes.Edge(Load, inside, outermost, _highest, _plate.Hz) is { } lift)
            _feet[k].Lift = lift;
    }

    private void TimeTransfer(int k)
    {
        var (leaving, coming) = (_feet[k], _feet[k + 1]);
        if (leaving.IsHidden || coming.IsHidden)
        {
            TimeHidden(k);
            return;
        }

        // Where they carry alike, both stand for certain.
        var from = (int)Math.Clamp(leaving.Contact, 0, _plate.Count - 1);
        var to = (int)Math.Clamp(coming.Lift, 0, _plate.Count - 1);
        // Feet whose times have crossed stood on no stretch together: the load is no walk, and Split says so of them.
        if (from > to)
            return;
        var start = (int)Math.Clamp(0.5 * (coming.Contact + leaving.Lift), from, to);
        while (start < to && OfComing(k, start) < 0.5 * Load(start))
            start++;
        while (start > from && OfComing(k, start) > 0.5 * Load(start))
            start--;
        if (FootTimes.Edge(i => OfComing(k, i), start, from, _highest, _plate.Hz) is { } contact && from < start)
            coming.Contact = contact;
        if (FootTimes.Edge(i => Load(i) - OfComing(k, i), start, to, _highest, _plate.Hz) is { } lift && to > start)
            leaving.Lift = lift;
    }

    /// <summary>
    /// A foot that presses from beyond the entry edge is there from the beginning and until its load has gone; one that presses from
    /// beyond the exit edge from where its load begins to the end.
    /// </summary>
    private void TimeHidden(int k)
    {
        var (leaving, coming) = (_feet[k], _feet[k + 1]);
        var mark = Math.Max(HiddenMarkKg, HiddenMark * _highest);
        if (leaving.IsHidden)
        {
            var i = (int)Math.Clamp(coming.Contact + (0.85 * (coming.Lift - coming.Contact)), 0, _plate.Count - 1);
            while (i > coming.Contact && Load(i) - OfComing(k, i) < mark)
                i--;
            leaving.Lift = Math.Max(i, leaving.Contact + 1);
            var middle = (int)Math.Clamp(coming.Middle, 1, _plate.Count - 1);
            if (FootTimes.Edge(s => OfComing(k, s), middle, (int)Math.Clamp(leaving.Contact - 1, 0, middle - 1), _highest, _plate.Hz) is { } contact)
                coming.Contact = contact;
        }
        else
        {
            var i = (int)Math.Clamp(leaving.Contact + (0.15 * (leaving.Lift - leaving.Contact)), 0, _plate.Count - 1);
            while (i < leaving.Lift && OfComing(k, i) < mark)
                i++;
            coming.Contact = Math.Min(i, coming.Lift - 1);
            var middle = (int)Math.Clamp(leaving.Middle, 0, _plate.Count - 2);
            if (FootTimes.Edge(s => Load(s) - OfComing(k, s), middle, (int)Math.Clamp(coming.Lift + 1, middle + 1, _plate.Count - 1), _highest, _plate.Hz) is { } lift)
                leaving.Lift = lift;
        }
    }

    private void TimeSwap(int k)
    {
        var (leaving, coming) = (_feet[k], _feet[k + 1]);
        var lines = _swaps[k] ??= SwapLines.At(_plate, (int)Math.Round(leaving.Lift));
        // A foot takes up its load gently: it comes before the straight line leaves zero and goes after it has reached it.
        var (early, late) = Toes();
        leaving.Lift = lines.Lift + (ToePart * late);
        coming.Contact = lines.Contact - (ToePart * early);
    }

    /// <summary>
    /// How long before the steepest line through its rise a foot of this crossing comes down, and how long after that through its fall it leaves,
    /// in samples: the means over the feet that are alone on the plate then.
    /// </summary>
    private (double Early, double Late) Toes()
    {
        double early = 0, late = 0;
        int contacts = 0, lifts = 0;
        foreach (var foot in _feet)
        {
            if (foot.IsOnEdge)
                continue;
            if (foot.ContactEvent == FootEvent.Alone)
            {
                early += Toe(SteepestLine.OfRise(_plate, (int)foot.Contact).Zero - foot.Contact);
                contacts++;
            }

            if (foot.LiftEvent == FootEvent.Alone)
            {
                late += Toe(foot.Lift - SteepestLine.OfFall(_plate, (int)Math.Ceiling(foot.Lift)).Zero);
                lifts++;
            }
        }

        return (early / Math.Max(1, contacts), late / Math.Max(1, lifts));
    }

    private double Toe(double samples) => Math.Clamp(samples, 0, LongestToeSeconds * _plate.Hz);

    private void Share(int k)
    {
        var foot = _feet[k];
        // Smoothing smears a foot that is alone a little beyond its own contact and lift: that load is its own too.
        var smear = 0.04 * _plate.Hz;
        var from = (int)Math.Ceiling(foot.Contact - (foot.ContactEvent == FootEvent.Alone ? smear : 0));
        var to = (int)Math.Floor(foot.Lift + (foot.LiftEvent == FootEvent.Alone ? smear : 0));
        if (k > 0)
            from = Math.Max(from, (int)Math.Ceiling(Math.Min(foot.Contact, _feet[k - 1].Lift)));
        from = Math.Clamp(from, 0, _plate.Count - 1);
        to = Math.Clamp(to, from, _plate.Count - 1);
        var force = new double[to - from + 1];
        double sum = 0, peak = 0;
        for (var i = from; i <= to; i++)
        {
            var kg = Load(i);
            if (k > 0 && i <= _feet[k - 1].Lift && _feet[k - 1].LiftEvent != FootEvent.Alone)
                kg = OfComing(k - 1, i);
            if (k + 1 < _feet.Count && i >= _feet[k + 1].Contact && foot.LiftEvent != FootEvent.Alone)
                kg -= OfComing(k, i);
            force[i - from] = kg;
            sum += kg;
            peak = Math.Max(peak, kg);
        }

        foot.ForceStart = from;
        foot.Force = force;
        foot.ImpulseKgSeconds = sum * _plate.Step;
        foot.PeakKg = peak;
    }

    private double Load(int i) => _plate.ForceKg[i];

    /// <summary>What the foot after the k-th carries while both stand.</summary>
    private double OfComing(int k, int i)
    {
        if (_feet[k].LiftEvent == FootEvent.Swap)
            return Load(i) * (_swaps[k] ??= SwapLines.At(_plate, (int)Math.Round(_feet[k].Lift))).PartOfComing(i);
        var leaving = _feet[k].XAt(i);
        var apart = _feet[k + 1].XAt(i) - leaving;
        if (Math.Abs(apart) < LeastApartMetres)
            apart = apart < 0 ? -LeastApartMetres : LeastApartMetres;
        return (_plate.MomentKgMetres[i] - (_plate.ForceKg[i] * leaving)) / apart;
    }
}
