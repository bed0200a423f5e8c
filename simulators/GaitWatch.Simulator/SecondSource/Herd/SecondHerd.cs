namespace GaitWatch.Simulator;

/// <summary>
/// A herd over months, made apart from <see cref="SimulatedHerd"/> by other means, so that what suits only one shows on the other. Detection was not made on it, and no
/// constant of detection was set on it.
/// </summary>
/// <remarks>
/// From published figures: 25 to 50 new cases per 100 cows and year (from memory, common practice), most behind. Everything else that decides is invented, as in the first source,
/// and other than there: see <see cref="SecondHerdCow"/> and <see cref="SecondTrouble"/>.
/// </remarks>
public sealed class SecondHerd
{
    private const double CasesPerCowAndYear = 0.38;
    private const double HindCases = 0.85;
    private const double BothHindCases = 0.08;
    private const double Crosses = 0.92;
    private const double TagMissed = 0.02;
    private const double TagOfAnother = 0.002;
    private const double LeavesADay = 0.2 / 365;
    private const int VisitEveryDays = 42;
    private const double BetweenCalvings = 385;
    private const double DryDays = 55;
    private static readonly double[] _milkings = [5.5, 16.2];

    private readonly long _seed;
    private readonly List<SecondTrouble> _troubles = [];
    private readonly List<SecondHerdEvent> _events = [];

    /// <summary>Draws a herd.</summary>
    /// <param name="seed">Decides everything.</param>
    /// <param name="cows">Cows at any time.</param>
    /// <param name="days">Days of history.</param>
    public SecondHerd(long seed, int cows = 200, int days = 240)
    {
        Days = days;
        _seed = seed;
        var platform = new SecondHerdPlatform(new SeededRandom(seed, 1), days);
        for (var place = 0; place < cows; place++)
            Live(place, cows, platform);
        _events.Sort((a, b) => (a.At, a.Cow).CompareTo((b.At, b.Cow)));
        Misread(new SeededRandom(seed, 2));
    }

    /// <summary>Days of history.</summary>
    public int Days { get; }

    /// <summary>The first instant.</summary>
    public static DateTimeOffset Start { get; } = new(2025, 3, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>What happened, by time.</summary>
    public IReadOnlyList<SecondHerdEvent> Events => _events;

    /// <summary>Every trouble as it truly was.</summary>
    public IReadOnlyList<SecondTrouble> Troubles => _troubles;

    // A place in the barn: one cow after the other.
    private void Live(int place, int cows, SecondHerdPlatform platform)
    {
        var random = new SeededRandom(_seed, 1000 + place);
        var generation = 0;
        var cow = Enter(place, generation, random);
        cow.CalvedOn = -random.Uniform(0, BetweenCalvings - DryDays);
        for (var day = 0; day < Days; day++)
        {
            if (random.Chance(LeavesADay))
            {
                _events.Add(new SecondHerdMilestone(At(day, 12), cow.Number, Milestone.Left));
                _troubles.AddRange(cow.Troubles);
                cow = Enter(place, ++generation, random);
                // A heifer that has just calved takes the place.
                cow.CalvedOn = day;
                continue;
            }

            var inMilk = day - cow.CalvedOn;
            if (inMilk >= BetweenCalvings)
            {
                cow.CalvedOn = day;
                cow.Turn();
                _events.Add(new SecondHerdMilestone(At(day, 3), cow.Number, Milestone.Calved));
            }
            else if (inMilk >= BetweenCalvings - DryDays)
            {
                if (inMilk < BetweenCalvings - DryDays + 1)
                    _events.Add(new SecondHerdMilestone(At(day, 4), cow.Number, Milestone.DriedOff));
                continue;
            }

            Trouble(cow, day, random);
            Treat(cow, day, random);
            foreach (var milking in _milkings)
            {
                if (!random.Chance(Crosses))
                    continue;
                // The order through the parlour is never twice the same.
                var at = At(day, milking + (2.2 * random.Below(1000 * cows) / (1000.0 * cows)));
                var (load, sound) = cow.Cross(at, day + (milking / 24));
                _events.Add(new SecondHerdCrossing(at, cow.Number, cow.Number, platform.Read(load, day), Whole(platform.Read(sound, day))));
            }
        }

        _troubles.AddRange(cow.Troubles);
    }

    private static SecondHerdCow Enter(int place, int generation, SeededRandom random) => new(FormattableString.Invariant($"{(1000 * (generation + 1)) + place}"), random);

    private static void Trouble(SecondHerdCow cow, int day, SeededRandom random)
    {
        if (cow.Troubles.Any(t => t.HealedAt is not { } healed || healed > At(day, 0)) || !random.Chance(CasesPerCowAndYear / 365))
            return;
        var isHind = random.Chance(HindCases);
        var isLeft = random.Chance(0.5);
        var trouble = new SecondTrouble(
            cow.Number, isHind ? isLeft ? Foot.Lh : Foot.Rh : isLeft ? Foot.Lf : Foot.Rf, isHind && random.Chance(BothHindCases),
            At(day, random.Uniform(0, 24)), Math.Exp(random.Normal(1.6, 0.6, 0.4, 2.8)), Math.Exp(random.Normal(-1.95, 0.45, -3, -0.9)));
        // Some go as they came, nobody knowing; the others stay until somebody does something.
        if (random.Chance(0.35))
            trouble = trouble with { TurnsAt = trouble.OnsetAt.AddDays(random.Uniform(35, 90)), HealingDays = random.Uniform(15, 40) };
        cow.Troubles.Add(trouble);
    }

    // The trimmer comes every six weeks and finds part of what there is; the farm sees what is severe within days.
    private void Treat(SecondHerdCow cow, int day, SeededRandom random)
    {
        for (var i = 0; i < cow.Troubles.Count; i++)
        {
            var trouble = cow.Troubles[i];
            if (trouble.TreatedAt is not null || trouble.TurnsAt <= At(day, 10))
                continue;
            var drop = trouble.DropAt(At(day, 10));
            if (!(day % VisitEveryDays == VisitEveryDays - 1 ? drop > 0.06 && random.Chance(0.7) : drop > 0.22 && random.Chance(0.15)))
                continue;
            cow.Troubles[i] = trouble with
            {
                TreatedAt = At(day, 10),
                TurnsAt = At(day, 10),
                HealingDays = random.Uniform(12, 35),
                Stays = random.Chance(0.25) ? random.Uniform(0.2, 0.9) : 0,
            };
            _events.Add(new SecondHerdTreatment(At(day, 10), cow.Number, trouble.Foot, random.Chance(0.5)));
            if (trouble.BothHind)
                _events.Add(new SecondHerdTreatment(At(day, 10.1), cow.Number, trouble.Foot.Opposite(), false));
        }
    }

    private void Misread(SeededRandom random)
    {
        string? before = null;
        for (var i = 0; i < _events.Count; i++)
        {
            if (_events[i] is not SecondHerdCrossing crossing)
                continue;
            if (random.Chance(TagMissed))
                _events[i] = crossing with { TagOf = null };
            else if (before is not null && random.Chance(TagOfAnother))
                _events[i] = crossing with { TagOf = before };
            before = crossing.Cow;
        }
    }

    private static PerFoot<double> Whole(PerFoot<double> loads)
    {
        var sum = loads.Values().Sum();
        return loads.Select(load => load / sum);
    }

    private static DateTimeOffset At(int day, double hour) => Start.AddDays(day).AddHours(hour);
}
