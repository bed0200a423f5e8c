namespace GaitWatch.Simulator;

/// <summary>
/// How one cow of the second source walks from crossing to crossing. Her legs scatter each by itself (the first source scatters balances), with a restlessness
/// of the moment that makes far tails of a normal's; a nod over the diagonals; moods that fade over a day or two, whatever the date; and a body that slowly changes.
/// </summary>
internal sealed class SecondHerdCow
{
    private const double MoodDays = 1.5;
    private const double Restlessness = 0.35;

    // Standard deviations of moods, logarithms of fore over hind and of left over right in front and behind.
    private static readonly double[] _moods = [0.008, 0.012, 0.015];

    // Standard deviation of a day's slow change of each of these.
    private const double ChangeADay = 0.0009;

    private readonly SeededRandom _random;
    private readonly double[] _mood = new double[3];
    private readonly double[] _body;
    private readonly double _legScatter;
    private readonly double _weightKg;
    private DateTimeOffset? _last;

    public SecondHerdCow(string number, SeededRandom random)
    {
        (Number, _random) = (number, random);
        // Most cows stand nearly even; a few favour a side for life: Laplace rather than normal.
        _body = [random.Normal(0.22, 0.06), Laplace(0.012), Laplace(0.016)];
        _legScatter = 0.027 * Math.Exp(random.Normal(0, 0.3));
        _weightKg = random.Normal(655, 60, 480, 860);
    }

    public string Number { get; }

    /// <summary>Her trouble, old or new.</summary>
    public List<SecondTrouble> Troubles { get; } = [];

    /// <summary>The day she calved last, in days of the history; may lie before it.</summary>
    public double CalvedOn { get; set; }

    /// <summary>Calving turns her body: a step in each ratio.</summary>
    public void Turn()
    {
        _body[0] += _random.Normal(0, 0.015);
        _body[1] += _random.Normal(0, 0.008);
        _body[2] += _random.Normal(0, 0.010);
    }

    /// <summary>Her loads at one crossing, kg, and her sound shares.</summary>
    /// <param name="at">When.</param>
    /// <param name="day">The same in days of the history.</param>
    public (PerFoot<double> LoadKg, PerFoot<double> SoundShares) Cross(DateTimeOffset at, double day)
    {
        var passed = _last is { } last ? (at - last).TotalDays : 100;
        _last = at;
        var stays = Math.Exp(-passed / MoodDays);
        for (var i = 0; i < 3; i++)
        {
            _mood[i] = (stays * _mood[i]) + (_moods[i] * Math.Sqrt(1 - (stays * stays)) * _random.Normal());
            _body[i] += ChangeADay * Math.Sqrt(Math.Min(passed, 30)) * _random.Normal();
        }

        var sound = Shares(_body[0], _body[1], _body[2]);
        var freshly = 1 + (0.6 * Math.Exp(-Math.Max(day - CalvedOn, 0) / 12));
        var drops = PerFoot.From(foot => Drop(foot, at));
        var lame = drops.Values().Max();
        // A lame cow walks less evenly.
        var scatter = _legScatter * freshly * (1 + (2 * lame)) * Math.Exp((Restlessness * _random.Normal()) - (Restlessness * Restlessness / 2));
        var nod = 0.5 * scatter * _random.Normal();
        var walked = Unloaded(Shares(_body[0] + _mood[0], _body[1] + _mood[1], _body[2] + _mood[2]), drops);
        var seen = Whole(PerFoot.From(foot => walked[foot] * Math.Exp((scatter * _random.Normal()) + (foot is Foot.Lf or Foot.Rh ? nod : -nod))));
        var weight = _weightKg * (1 + (0.02 * Math.Sin(day / 19)) + _random.Normal(0, 0.012));
        return (seen.Select(share => share * weight), sound);
    }

    private double Drop(Foot foot, DateTimeOffset at) =>
        Troubles.Where(t => t.Foot == foot || (t.BothHind && t.Foot.Opposite() == foot)).Select(t => t.DropAt(at)).DefaultIfEmpty(0).Max();

    // Of what a sore leg gives up 65 % goes to its opposite, 25 % to the leg of the other pair on the other side, the rest to the last: invented within what is
    // known, that most goes to the opposite leg.
    private static PerFoot<double> Unloaded(PerFoot<double> shares, PerFoot<double> drops)
    {
        var lost = PerFoot.From(foot => shares[foot] * drops[foot]);
        return PerFoot.From(foot => shares[foot] - lost[foot] + (0.65 * lost[foot.Opposite()]) + (0.25 * lost[Across(foot)]) + (0.10 * lost[Across(foot).Opposite()]));
    }

    private static Foot Across(Foot foot) => foot switch { Foot.Lf => Foot.Rh, Foot.Rf => Foot.Lh, Foot.Lh => Foot.Rf, _ => Foot.Lf };

    private static PerFoot<double> Shares(double foreOverHind, double foreLeft, double hindLeft)
    {
        var half = foreOverHind / 2;
        return Whole(new PerFoot<double>(Math.Exp(half + (foreLeft / 2)), Math.Exp(half - (foreLeft / 2)), Math.Exp((hindLeft / 2) - half), Math.Exp(-half - (hindLeft / 2))));
    }

    private static PerFoot<double> Whole(PerFoot<double> parts)
    {
        var sum = parts.Values().Sum();
        return parts.Select(part => part / sum);
    }

    private double Laplace(double scale) => _random.Exponential(scale) * (_random.Chance(0.5) ? 1 : -1);
}
