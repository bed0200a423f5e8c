using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// A herd's history folded into what is known of each cow: her baseline, the evidence on each leg, her open alerts, and what
/// moves everybody at once. The state after a history is a pure function of it; no decision looks ahead of its input.
/// </summary>
/// <remarks>Not safe for use by several threads at once.</remarks>
public sealed class HerdFold
{
    /// <summary>First bytes of a saved state, and its version: raised whenever what is saved, or what follows from it, changes.</summary>
    private const uint Magic = 0x464C5747;
    private const int Version = 5;

    private FoldedHerd _folded = new(new HerdModel());

    /// <summary>A herd of which nothing is known.</summary>
    /// <exception cref="ArgumentException">A setting is out of its range.</exception>
    public HerdFold(LamenessOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Require(options.FalseAlertsPer100CowsPerWeek, 0.01, 50, nameof(options.FalseAlertsPer100CowsPerWeek));
        Require(options.WeightTolerance, 0.02, 1, nameof(options.WeightTolerance));
        Options = options;
    }

    /// <summary>The settings.</summary>
    public LamenessOptions Options { get; }

    /// <summary>Time of the newest input folded; null before the first.</summary>
    public DateTimeOffset? Head { get; private set; }

    /// <summary>The newest common movement of every platform.</summary>
    public ImmutableArray<PlatformShift> Shifts => [.. _folded.Platforms.Select(p => PlatformText.Shift(p.Key, p.Value))];

    /// <summary>Every alert that is not closed, in order of cow, then of <see cref="Alert.RaisedAt"/>.</summary>
    public ImmutableArray<Alert> OpenAlerts =>
        [.. _folded.Ordered.SelectMany(cow => cow.Troubles.Select(t => t.Alert).OrderBy(a => a.RaisedAt))];

    /// <summary>Folds one more input.</summary>
    /// <exception cref="InvalidOperationException">The input lies before <see cref="Head"/>: a late one needs an earlier checkpoint.</exception>
    /// <exception cref="ArgumentException">A passage lacks the share of a leg.</exception>
    public FoldStep Fold(HerdInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.At < Head)
        {
            throw new InvalidOperationException(
                $"The input at {input.At:O} lies before {Head:O}, up to which the history is folded; fold again from a checkpoint before it.");
        }

        var day = TimeZoneInfo.ConvertTime(input.At, Options.TimeZone).Ticks / TimeSpan.TicksPerDay;
        return input switch
        {
            PassageInput passage => FoldPassage(passage, day),
            CowEventInput known => FoldEvent(known, day),
            _ => throw new ArgumentException($"An input is a passage or an event, not a {input.GetType().Name}.", nameof(input)),
        };
    }

    /// <summary>The whole state, to go on from later. What is restored behaves exactly as what was saved.</summary>
    public byte[] Save()
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream, Encoding.UTF8);
        writer.Write(Magic);
        writer.Write(Version);
        writer.Write(Options.FalseAlertsPer100CowsPerWeek);
        writer.Write(Options.WeightTolerance);
        writer.Write(Options.TimeZone.Id);
        writer.Write(Head?.UtcTicks ?? -1);
        _folded.Model.Save(writer);
        writer.Write(_folded.Platforms.Count);
        foreach (var (name, platform) in _folded.Platforms)
        {
            writer.Write(name);
            platform.Save(writer);
        }

        writer.Write(_folded.Cows.Count);
        foreach (var cow in _folded.Ordered)
            cow.Save(writer);
        writer.Flush();
        return stream.ToArray();
    }

    /// <summary>The state that <see cref="Save"/> wrote.</summary>
    /// <exception cref="FormatException">The bytes are no state of this version; fold again from the start.</exception>
    public static HerdFold Restore(LamenessOptions options, ReadOnlySpan<byte> saved)
    {
        using var stream = new MemoryStream(saved.ToArray(), writable: false);
        using var reader = new BinaryReader(stream, Encoding.UTF8);
        try
        {
            if (reader.ReadUInt32() != Magic)
                throw new FormatException("The bytes do not begin as the saved state of a herd does.");
            var version = reader.ReadInt32();
            if (version != Version)
                throw new FormatException($"The state has version {version}; this is version {Version}. Fold again from the start.");
            var (budget, tolerance, zone) = (reader.ReadDouble(), reader.ReadDouble(), reader.ReadString());
            // A state under other settings is no start for this one: what the past raised would stay as it was raised.
            if (budget != options.FalseAlertsPer100CowsPerWeek || tolerance != options.WeightTolerance || zone != options.TimeZone.Id)
            {
                throw new FormatException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"The state was folded with a budget of {budget} false alerts, a weight tolerance of {tolerance} and the time zone {zone}; now they are {options.FalseAlertsPer100CowsPerWeek}, {options.WeightTolerance} and {options.TimeZone.Id}. Fold again from the start."));
            }

            var fold = new HerdFold(options);
            var head = reader.ReadInt64();
            fold.Head = head < 0 ? null : new DateTimeOffset(head, TimeSpan.Zero);
            var folded = fold._folded = new FoldedHerd(HerdModel.Load(reader));
            for (var platforms = reader.ReadInt32(); platforms > 0; platforms--)
                folded.Platforms.Add(reader.ReadString(), PlatformMovement.Load(reader));
            for (var cows = reader.ReadInt32(); cows > 0; cows--)
            {
                var cow = CowWatch.Load(reader, folded.Model);
                folded.Cows.Add(cow.Name, cow);
            }

            return stream.Position == stream.Length
                ? fold
                : throw new FormatException($"{stream.Length - stream.Position} bytes are left over after the state.");
        }
        catch (Exception e) when (e is EndOfStreamException or ArgumentException or IOException)
        {
            throw new FormatException("The bytes are not the whole saved state of a herd. Fold again from the start.", e);
        }
    }

    private FoldStep FoldPassage(PassageInput input, long day)
    {
        var passage = input.Passage;
        var reading = ReadingOf(passage, day);
        Advance(input.At, day);
        _folded.PlatformOf(passage.Platform).Enter(reading.Ticks);
        return _folded.CowOf(input.Cow).Pass(input, reading, _folded, Options);
    }

    private FoldStep FoldEvent(CowEventInput input, long day)
    {
        Advance(input.At, day);
        var known = input.Event;
        var changes = _folded.CowOf(known.Cow).Know(known, _folded, day, Options);
        if (known is LeftHerd)
            _folded.Cows.Remove(known.Cow);
        return new FoldStep(null, changes);
    }

    private void Advance(DateTimeOffset at, long day)
    {
        Head = at;
        if (!_folded.Model.Enter(day))
            return;
        var means = new List<Vector3>();
        var weights = new List<double>();
        var tails = new double[CowNoise.Tails.Length];
        foreach (var cow in _folded.Cows.Values)
        {
            if (cow.KnownMean is { } mean)
                means.Add(mean);
            if (cow.LogWeight is { } weight)
                weights.Add(weight);
            if (cow.KnownTails is { } known)
                tails[known]++;
        }

        _folded.Model.Refresh(Options, means, weights, tails);
    }

    private Reading ReadingOf(Passage passage, long day)
    {
        var shares = PerLeg.From(leg => passage.Legs[leg].Share
            ?? throw new ArgumentException($"Passage {passage.Id} has no share for {leg.WireName()}; only passages with all four legs are folded."));
        Vector3? error = null;
        if (passage.Legs is { Lf.ShareError: { } lf, Rf.ShareError: { } rf, Lh.ShareError: { } lh, Rh.ShareError: { } rh })
        {
            var relative = new PerLeg<double>(
                Square(lf / shares.Lf), Square(rf / shares.Rf), Square(lh / shares.Lh), Square(rh / shares.Rh));
            error = new Vector3(
                ((relative.Lf + relative.Rf) + (relative.Lh + relative.Rh)) / 4, (relative.Lf + relative.Rf) / 2, (relative.Lh + relative.Rh) / 2);
        }

        return new Reading(Balances.FromShares(shares).ToVector(), _folded.Model.ExtraError(error), passage.EndedAt.UtcTicks, day);
    }

    private static void Require(double value, double least, double most, string name)
    {
        if (!(value >= least && value <= most))
            throw new ArgumentException($"{name} is {value}; it has to lie between {least} and {most}.", name);
    }

    private static double Square(double x) => x * x;
}
