using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// Crossings from a source of their own, made from the published facts and general mechanics apart from <see cref="WalkGenerator"/>:
/// other force curves (and, in half of the cows, a body carried as a whole), other laws of the stance, of the speed and of the way heel
/// to toe, other soles, other noise and ringing. An analysis that suits only one source shows it on the other. The same seed gives the same
/// crossing.
/// </summary>
public static partial class SecondWalks
{
    /// <summary>A crossing of a kind.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="platform">Default: the contract's example. Its <see cref="SimulatedPlatform.Sensors"/> are not looked at.</param>
    public static SimulatedCrossing Of(CrossingKind kind, long seed, SimulatedPlatform? platform = null)
    {
        platform ??= SimulatedPlatform.Default;
        var random = new SeededRandom(seed, 2000 + (long)kind);
        return kind switch
        {
            CrossingKind.Steady => Walk(kind, platform, random, SpeedCourse.Steady(random)),
            CrossingKind.Varied => Walk(kind, platform, random, SpeedCourse.Varied(random, platform.PlateLengthMetres)),
            CrossingKind.TwoCows => TwoCows(platform, random),
            CrossingKind.Stops => Stops(platform, random),
            CrossingKind.TurnsBack => TurnsBack(platform, random),
            CrossingKind.BacksAStep => BacksAStep(platform, random),
            CrossingKind.Runs => Runs(platform, random),
            CrossingKind.Calf => Calf(platform, random),
            CrossingKind.Dog => Dog(platform, random),
            CrossingKind.Person => Person(platform, random),
            CrossingKind.MissingFrames => MissingFrames(platform, random),
            CrossingKind.HalfCrossed => HalfCrossed(platform, random),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of crossing."),
        };
    }

    private static SimulatedCrossing Walk(CrossingKind kind, SimulatedPlatform platform, SeededRandom random, Func<double, double> speedAt)
    {
        var cow = WayOfWalking.Draw(random);
        var pace = new Pace(speedAt, cow.StrideSecondsAt, platform.PlateLengthMetres, random.Uniform());
        var treads = Treads(cow, pace, random);
        return Record(kind, platform, random, treads, cow.WeightKg, treads, pace);
    }

    /// <summary>Every footfall of a cow's walk, on the plates and beyond them.</summary>
    internal static List<Tread> Treads(WayOfWalking cow, Pace pace, SeededRandom random, int animal = 0)
    {
        var curves = PerFoot.From(foot => foot.IsFore() ? FootCurves.Fore(random) : FootCurves.Hind(random));
        var rolls = PerFoot.From(_ => HeelToToe.Draw(random));
        var halfLength = random.Uniform(0.058, 0.068);
        var (fore, hind) = (Pair(isFore: true), Pair(isFore: false));
        var treads = new List<Tread>();
        for (var k = 2; k + 2 < pace.LastStrides - 1; k++)
        {
            foreach (var foot in (ReadOnlySpan<Foot>)[Foot.Lh, Foot.Lf, Foot.Rh, Foot.Rf])
            {
                var (contact, lift) = Stance(foot, k);
                var (before, after) = (Stance(foot, k - 1), Stance(foot, k + 1));
                var stride = 0.25 * (after.Contact + after.Lift - before.Contact - before.Lift);
                var ahead = treads.FindLast(tread => tread.Foot == (foot == Foot.Lh ? Foot.Lf : Foot.Rf));
                if (!foot.IsFore() && ahead is null)
                    continue;
                var x = foot.IsFore()
                    ? pace.XAt(0.5 * (contact + lift)) + random.Normal(0, 0.012, -0.03, 0.03)
                    : ahead!.X + Math.Clamp(cow.TrackUpMetres + random.Normal(0, 0.012, -0.03, 0.03), -0.1, 0.1);
                treads.Add(new()
                {
                    Animal = animal, Foot = foot, IsOnLeft = foot.IsLeft(), X = x, ContactSeconds = contact, LiftSeconds = lift, StrideSeconds = stride,
                    Roll = rolls[foot], HalfLengthMetres = halfLength,
                    Kg = cow.IsWholeBody ? Handed(foot.IsFore() ? fore : hind, foot, k, contact, lift) : Curved(foot, contact, lift, stride),
                });
            }
        }

        return treads;

        (double Contact, double Lift) Stance(Foot foot, int k)
        {
            var at = k + cow.LagOf(foot);
            var duty = Math.Clamp(cow.DutyAt(pace.StrideSecondsAround(at)) * cow.StancePart[foot], cow.IsWholeBody ? 0.56 : 0.54, 0.79);
            return (pace.SecondsAt(at), pace.SecondsAt(at + duty));
        }

        PairHandover Pair(bool isFore)
        {
            var (left, right) = isFore ? (cow.Shares.Lf, cow.Shares.Rf) : (cow.Shares.Lh, cow.Shares.Rh);
            var middle = (isFore ? cow.ForeLag : 0) + (0.5 * cow.DutyAt(cow.StrideSecondsAt(1.08)));
            return new(random, cow.WeightKg, isFore, left + right, left / (left + right), at => pace.StridesAt(at) - middle, pace.AccelerationAt);
        }

        Func<double, double, double> Curved(Foot foot, double contact, double lift, double stride)
        {
            // Sum of force x time over a stride = weight x stride time; speeding up moves load from the fore to the hind legs.
            var lean = Math.Clamp(pace.AccelerationAt(0.5 * (contact + lift)), -0.4, 0.4) * 0.85 / 1.25 / 9.81;
            var pair = foot.IsFore() ? cow.Shares.Lf + cow.Shares.Rf : cow.Shares.Lh + cow.Shares.Rh;
            var share = cow.Shares[foot] * (1 + ((foot.IsFore() ? -lean : lean) / pair));
            var mean = share * cow.WeightKg * stride / (lift - contact);
            var curve = curves[foot];
            return (_, fraction) => mean * curve.At(fraction);
        }

        Func<double, double, double> Handed(PairHandover pair, Foot foot, int k, double contact, double lift)
        {
            var other = foot.Opposite();
            var otherBefore = Stance(other, foot.IsLeft() ? k - 1 : k);
            var otherAfter = Stance(other, foot.IsLeft() ? k : k + 1);
            var (bothAtFirst, bothAtLast) = (otherBefore.Lift - contact, lift - otherAfter.Contact);
            return (seconds, _) =>
            {
                var kg = pair.Kg(seconds);
                if (seconds < otherBefore.Lift)
                    kg *= pair.TakenOver((seconds - contact) / bothAtFirst);
                if (seconds > otherAfter.Contact)
                    kg *= 1 - pair.TakenOver((seconds - otherAfter.Contact) / bothAtLast);
                return kg;
            };
        }
    }

    /// <summary>Records feet on the platform, with empty plate before and after.</summary>
    /// <param name="kind">What to call it.</param>
    /// <param name="platform">The platform.</param>
    /// <param name="random">Draws the cells and the time before and after.</param>
    /// <param name="treads">The feet, some of which meet the platform.</param>
    /// <param name="weightKg">Weight of the first animal.</param>
    /// <param name="walk">All feet of a good walk; null when it is none.</param>
    /// <param name="pace">Its pace.</param>
    private static SimulatedCrossing Record(
        CrossingKind kind, SimulatedPlatform platform, SeededRandom random, IReadOnlyList<Tread> treads, double weightKg, IReadOnlyList<Tread>? walk = null, Pace? pace = null)
    {
        var length = platform.PlateLengthMetres;
        var perSample = (int)Math.Ceiling((1000 / platform.Hz) - 1e-9);
        var tick = 1 / (platform.Hz * perSample);
        Tread[] met = [.. treads.Where(tread => tread.Touches(length))];
        var start = met.Min(tread => tread.ContactSeconds) - random.Uniform(0.6, 1.6);
        var samples = (int)Math.Ceiling((met.Max(tread => tread.LiftSeconds) + random.Uniform(0.7, 1.6) - start) * platform.Hz);
        var cells = new BarnCells(platform, samples * perSample, tick);
        var footfalls = new List<FootfallTruth>();
        foreach (var tread in met)
        {
            var shifted = tread with
            {
                ContactSeconds = tread.ContactSeconds - start,
                LiftSeconds = tread.LiftSeconds - start,
                Kg = (seconds, fraction) => tread.Kg(seconds + start, fraction),
                Fraction = tread.Fraction is { } of ? seconds => of(seconds + start) : null,
            };
            if (cells.Add(shifted) is { } truth)
                footfalls.Add(walk is null ? truth with { StrideSeconds = null } : truth);
        }

        footfalls.Sort((a, b) => a.ContactSeconds.CompareTo(b.ContactSeconds));
        var (first, last) = (footfalls[0].ContactSeconds, footfalls[^1].ContactSeconds);
        var wholes = footfalls.Where(footfall => footfall.IsWhole).ToArray();
        return new(kind, platform, cells.Read(random, perSample), ImmutableArray<LostSamples>.Empty, new CrossingTruth(
            weightKg,
            walk is null ? null : LegTruths.Of(wholes),
            walk is null || wholes.Length == 0 ? null : wholes.Average(footfall => footfall.StrideSeconds),
            pace is null ? null : (pace.XAt(last + start) - pace.XAt(first + start)) / (last - first),
            first,
            footfalls.Max(footfall => footfall.LiftSeconds),
            [.. footfalls]));
    }
}
