namespace GaitWatch.Simulator;

/// <summary>
/// A herd over months: every cow's life and troubles, planned from the seed, and the stream of what the barn tells of it. The stream
/// can be enumerated any number of times and is the same each time.
/// </summary>
public sealed class SimulatedHerd
{
    private readonly DateTimeOffset _start;
    private readonly PlatformWeather _weather;

    /// <summary>Plans a herd.</summary>
    /// <param name="spec">What it is like.</param>
    /// <exception cref="InvalidOperationException">A demonstration's herd has too few cows in mid-lactation.</exception>
    public SimulatedHerd(HerdSpec spec)
    {
        Spec = spec;
        _start = new(spec.Start, TimeOnly.MinValue, TimeSpan.Zero);
        _weather = new(spec);
        var cows = LifePlanner.Plan(spec);
        var planner = new EpisodePlanner(spec);
        var demo = DemoCases.Assign(spec, cows);
        Cows = [.. cows.Select((cow, i) => planner.Plan(cow, i, demo.GetValueOrDefault(i) ?? []))];
        Episodes = [.. Cows.SelectMany(cow => cow.Episodes).OrderBy(episode => episode.OnsetAt)];
        VisitDates = [.. planner.VisitDays.Select(day => spec.Start.AddDays(day))];
    }

    /// <summary>What the herd is like.</summary>
    public HerdSpec Spec { get; }

    /// <summary>Every cow ever in it.</summary>
    public IReadOnlyList<SimulatedCow> Cows { get; }

    /// <summary>The truth: every trouble, by onset.</summary>
    public IReadOnlyList<LamenessEpisode> Episodes { get; }

    /// <summary>Days of the trimmer's visits, the next ones after the end included.</summary>
    public IReadOnlyList<DateOnly> VisitDates { get; }

    /// <summary>The day of the history at an instant, 0 on the first.</summary>
    public int DayOf(DateTimeOffset at) => (int)Math.Floor((at - _start).TotalDays);

    /// <summary>A cow's weight and true shares at an instant, soreness, milk and calf included, without scatter.</summary>
    /// <param name="cow">The cow.</param>
    /// <param name="at">The instant.</param>
    /// <param name="udderKg">Milk in her udder, kg.</param>
    public (double WeightKg, PerFoot<double> Shares) StateAt(SimulatedCow cow, DateTimeOffset at, double udderKg = 0)
    {
        var (weight, shares) = SoundStateAt(cow, at, udderKg);
        return (weight, Sored(cow, shares, at));
    }

    /// <summary>The same were she sound.</summary>
    internal (double WeightKg, PerFoot<double> Shares) SoundStateAt(SimulatedCow cow, DateTimeOffset at, double udderKg)
    {
        var (weight, shares) = Spec.Lactations ? CowBody.Without(cow, DayOf(at)) : (cow.WeightKg, cow.Shares);
        return udderKg > 0 ? (weight + udderKg, shares.Carrying(weight, udderKg, CowBody.ForeOfMilk)) : (weight, shares);
    }

    /// <summary>The register entry of a cow on a day; null before she is in the herd.</summary>
    public RegisterEntry? EntryOn(SimulatedCow cow, int day)
    {
        if (day < cow.EntersOn)
            return null;
        day = Math.Min(day, cow.LeavesOn ?? day);
        var left = cow.LeavesOn is { } leaves && day >= leaves ? Date(leaves) : (DateOnly?)null;
        var count = cow.CalvingsBy(day);
        var toCalving = cow.DaysToCalvingOn(day);
        return new(
            cow.Number,
            cow.Eid,
            cow.IsInHospitalOn(day) ? "H" : cow.IsDryOn(day) ? "D" : cow.Pen,
            cow.FirstParity + count - 1,
            Date(cow.Calvings[count - 1]),
            cow.IsDryOn(day) ? Date(cow.DryOffs[count - 1]) : null,
            // In calf for certain from about 45 days after service.
            toCalving is { } ahead and < CowBody.PregnancyDays - 45 ? Date(day + ahead) : null,
            left);
    }

    /// <summary>Everything that the barn tells, by arrival. Lazy: a day is made when it is asked for.</summary>
    public IEnumerable<HerdEvent> Events()
    {
        var late = new PriorityQueue<HerdEvent, (DateTimeOffset At, long Order)>();
        long order = 0;
        var maker = new PassageMaker(this, _weather);
        var today = new List<HerdEvent>();
        for (var day = 0; day < Spec.Days && _start.AddDays(day) < Spec.End; day++)
        {
            today.Clear();
            Registrations(day, today);
            Visits(day, today);
            foreach (var cow in Cows)
            {
                foreach (var finding in cow.Findings)
                {
                    if (DayOf(finding.At) == day)
                        today.Add(finding);
                }
            }

            maker.Make(day, today);
            var end = _start.AddDays(day + 1);
            // What arrives after midnight waits for its day; what arrives at one instant keeps the order it was made in.
            foreach (var happened in today)
                late.Enqueue(happened, (happened.ArrivesAt, order++));
            while (late.TryPeek(out _, out var next) && next.At < end)
            {
                var told = late.Dequeue();
                if (told.ArrivesAt < Spec.End)
                    yield return told;
            }
        }

        while (late.TryDequeue(out var rest, out _))
        {
            if (rest.ArrivesAt < Spec.End)
                yield return rest;
        }
    }

    internal DateTimeOffset Midnight(int day) => _start.AddDays(day);

    private static PerFoot<double> Sored(SimulatedCow cow, PerFoot<double> shares, DateTimeOffset at)
    {
        double lf = 0, rf = 0, lh = 0, rh = 0;
        foreach (var episode in cow.Episodes)
        {
            var drop = episode.DropAt(at);
            // Pain relief hides most of it for three days (invented).
            foreach (var start in episode.Healing)
            {
                if (start.HasPainRelief && at >= start.At && at < start.At.AddDays(3))
                    drop *= 0.6;
            }

            switch (episode.Foot)
            {
                case Foot.Lf: lf = Math.Max(lf, drop); break;
                case Foot.Rf: rf = Math.Max(rf, drop); break;
                case Foot.Lh: lh = Math.Max(lh, drop); break;
                default: rh = Math.Max(rh, drop); break;
            }
        }

        return Pair(Pair(shares, Foot.Lh, lh, rh), Foot.Lf, lf, rf);
    }

    /// <summary>One leg of a pair sore: most goes to the other. What both have in common goes to the other pair.</summary>
    private static PerFoot<double> Pair(PerFoot<double> shares, Foot left, double leftDrop, double rightDrop)
    {
        if (leftDrop == 0 && rightDrop == 0)
            return shares;
        var right = left.Opposite();
        var both = Math.Min(leftDrop, rightDrop);
        if (both > 0)
        {
            var lost = both * (shares[left] + shares[right]);
            var others = 1 - shares[left] - shares[right];
            var before = shares;
            shares = PerFoot.From(foot => foot == left || foot == right ? before[foot] * (1 - both) : before[foot] * (1 + lost / others));
        }

        var (worse, more) = leftDrop > rightDrop ? (left, leftDrop) : (right, rightDrop);
        return shares.Sore(worse, Math.Clamp(1 - (1 - more) / (1 - both), 0, 0.9));
    }

    private DateOnly Date(int day) => Spec.Start.AddDays(day);

    private void Registrations(int day, List<HerdEvent> today)
    {
        foreach (var cow in Cows)
        {
            if (EntryOn(cow, day) is not { } entry)
                continue;
            var before = day == 0 ? null : EntryOn(cow, day - 1);
            if (before != entry)
                today.Add(new RegisterEvent(_start.AddDays(day), entry));
        }
    }

    private void Visits(int day, List<HerdEvent> today)
    {
        // Agreed a fortnight ahead; the first ones on the first day.
        foreach (var date in VisitDates)
        {
            var ahead = date.DayNumber - Spec.Start.AddDays(day).DayNumber;
            if (ahead == 14 || (day == 0 && ahead is >= 0 and < 14))
                today.Add(new VisitEvent(_start.AddDays(day).AddHours(8), date, Math.Max(10, Spec.Cows / 8)));
        }
    }
}
