using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Cuts stretches into loads between two empty platforms.</summary>
internal sealed class LoadedSpans
{
    /// <summary>
    /// Less than this on the whole platform is a bird, a scraper's brush or a step of the zero, kg; the smallest animal that is
    /// told from nothing is a dog.
    /// </summary>
    private const double LeastLoadKg = 7;

    /// <summary>How long it must be carried, seconds.</summary>
    private const double LeastLoadSeconds = 0.15;

    /// <summary>Two loads cut by a gap are one when the gap is shorter than a slow cow's crossing.</summary>
    private static readonly TimeSpan LongestGap = TimeSpan.FromSeconds(10);

    private readonly ImmutableArray<LoadedSpan>.Builder _spans = ImmutableArray.CreateBuilder<LoadedSpan>();
    private readonly ImmutableArray<ZeroLevels>.Builder _zeros = ImmutableArray.CreateBuilder<ZeroLevels>();
    private (DateTimeOffset From, DateTimeOffset To)? _open;
    private ZeroLevels? _lastZero;

    /// <summary>The loads that are over.</summary>
    public ImmutableArray<LoadedSpan> Spans => _spans.ToImmutable();

    /// <summary>The zero of every empty stretch.</summary>
    public ImmutableArray<ZeroLevels> Zeros => _zeros.ToImmutable();

    /// <summary>Whether the recording begins under load.</summary>
    public bool BeginsLoaded { get; private set; }

    /// <summary>Since when the load stands with which the recording ends; null when it ends empty.</summary>
    public DateTimeOffset? LoadedSince { get; private set; }

    /// <summary>Cuts a recording.</summary>
    /// <param name="stretches">Stretches in order of time.</param>
    /// <param name="before">The zero last known before them.</param>
    public static LoadedSpans Cut(List<Stretch> stretches, ZeroLevels? before)
    {
        var spans = new LoadedSpans { _lastZero = before };
        for (var k = 0; k < stretches.Count; k++)
            spans.Add(stretches[k], isFirst: k == 0, isLast: k == stretches.Count - 1);
        return spans;
    }

    private void Add(Stretch stretch, bool isFirst, bool isLast)
    {
        var empties = EmptyStretches.Find(stretch);
        var loadEnd = empties.Count == 0 ? stretch.Count : empties[0].Start;
        if (loadEnd > 0)
            AddLoad(new Candidate(stretch, new SampleRange(0, loadEnd), null, empties.Count == 0 ? null : empties[0]), isFirst, isLast);
        else
            CloseOpen();
        for (var k = 0; k < empties.Count; k++)
        {
            _lastZero = ZeroLine.LevelsOf(stretch, empties[k]);
            _zeros.Add(_lastZero);
            var next = k + 1 < empties.Count ? empties[k + 1] : (SampleRange?)null;
            var load = new SampleRange(empties[k].End, next?.Start ?? stretch.Count);
            if (load.Count > 0)
                AddLoad(new Candidate(stretch, load, empties[k], next), isFirst, isLast);
        }
    }

    private void AddLoad(Candidate load, bool isFirst, bool isLast)
    {
        if (load.IsTrifle(_lastZero))
        {
            if (load.EmptyBefore is null)
                CloseOpen();
            return;
        }

        var zero = load.Zero(_lastZero);
        var isLastOfAll = isLast && load.EmptyAfter is null;
        var beginsWhole = load.EmptyBefore is not null || (zero is not null && load.IsUnloadedAt(load.Range.Start, zero));
        var endsWhole = load.EmptyAfter is not null || (!isLast && zero is not null && load.IsUnloadedAt(load.Range.End - Candidate.EdgeSamples, zero));
        var from = load.Stretch.TimeAt(load.Range.Start);
        var to = load.Stretch.TimeAt(load.Range.End);
        BeginsLoaded |= isFirst && load.EmptyBefore is null;
        if (!beginsWhole && _open is { } open && from - open.To <= LongestGap)
            from = open.From;
        else
            CloseOpen();
        _open = null;
        if (isLastOfAll)
            LoadedSince = from;
        else if (!endsWhole)
            _open = (from, to);
        else
            _spans.Add(new LoadedSpan(from, to, beginsWhole ? new RecordedLoad(load.Stretch, load.Range, zero!) : null));
    }

    private void CloseOpen()
    {
        if (_open is { } open)
            _spans.Add(new LoadedSpan(open.From, open.To, null));
        _open = null;
    }

    /// <summary>A stretch of samples that may be a load, and the empties beside it.</summary>
    private sealed record Candidate(Stretch Stretch, SampleRange Range, SampleRange? EmptyBefore, SampleRange? EmptyAfter)
    {
        /// <summary>So many samples tell whether the load had begun where the recording does.</summary>
        public const int EdgeSamples = 3;

        public ZeroLine? Zero(ZeroLevels? lastKnown) => ZeroLine.For(Stretch, EmptyBefore, EmptyAfter, lastKnown);

        /// <summary>Whether hardly anything was carried, seen from the zero of either side, so that a step of the zero is nothing.</summary>
        public bool IsTrifle(ZeroLevels? lastKnown)
        {
            var fromLeft = ZeroLine.For(Stretch, EmptyBefore ?? EmptyAfter, null, lastKnown);
            var fromRight = ZeroLine.For(Stretch, null, EmptyAfter ?? EmptyBefore, lastKnown);
            if (fromLeft is null || fromRight is null)
                return false;
            var needed = Math.Max(2, (int)Math.Round(LeastLoadSeconds * Stretch.Hz));
            var carried = 0;
            for (var i = Range.Start; i < Range.End; i++)
            {
                if (Math.Min(Load(i, fromLeft), Load(i, fromRight)) >= LeastLoadKg && ++carried >= needed)
                    return false;
            }

            return true;
        }

        /// <summary>Whether the samples from an index on carry next to nothing.</summary>
        public bool IsUnloadedAt(int index, ZeroLine zero)
        {
            var sum = 0.0;
            var count = 0;
            for (var i = Math.Max(index, 0); i < Math.Min(index + EdgeSamples, Stretch.Count); i++, count++)
                sum += Math.Abs(Load(i, zero));
            return sum < LeastLoadKg * count;
        }

        private double Load(int index, ZeroLine zero)
        {
            var load = 0.0;
            for (var cell = 0; cell < Stretch.SamplesKg.Length; cell++)
                load += Stretch.SamplesKg[cell][index] - zero.At(cell, index);
            return load;
        }
    }
}
