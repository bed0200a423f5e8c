using System.Globalization;

namespace GaitWatch.Store.Tests;

/// <summary>A database in memory that follows InfluxDB's rules: same measurement, tags and time overwrite field by field; a deletion takes what has all its tags.</summary>
internal sealed class ModelInflux : ISeriesTarget
{
    private readonly Dictionary<(string Series, long At), SortedDictionary<string, string>> _points = [];

    public int Count => _points.Count;

    /// <summary>Answers the next calls with these statuses; null takes the call.</summary>
    public Queue<int?> Answers { get; } = new();

    /// <summary>Refuses every write with such a line.</summary>
    public Func<string, bool> IsBad { get; init; } = _ => false;

    /// <summary>Everything it shows, a line a point.</summary>
    public SortedSet<string> Shown => new(
        _points.Select(point => $"{point.Key.Series} {string.Join(',', point.Value.Select(one => $"{one.Key}={one.Value}"))} {point.Key.At}"), StringComparer.Ordinal);

    public Task WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellation)
    {
        Answer();
        // As InfluxDB does: the good ones are taken, the call is refused.
        foreach (var line in lines.Where(line => !IsBad(line)))
        {
            var parts = Split(line, ' ');
            var at = (parts[0], long.Parse(parts[2], CultureInfo.InvariantCulture));
            if (!_points.TryGetValue(at, out var fields))
                _points[at] = fields = new SortedDictionary<string, string>(StringComparer.Ordinal);
            foreach (var (name, value) in FieldsOf(line))
                fields[name] = value;
        }

        return lines.Any(IsBad) ? throw new SeriesRefusedException(400, "partial write", null, null) : Task.CompletedTask;
    }

    public Task DeleteAsync(SeriesDeletion deletion, CancellationToken cancellation)
    {
        Answer();
        var gone = _points.Keys.Where(point => point.At >= deletion.From && point.At <= deletion.To && Split(point.Series, ',') is var parts
            && parts[0] == deletion.Measurement && deletion.Tags.All(tag => parts.Contains($"{tag.Name}={tag.Value}"))).ToArray();
        foreach (var point in gone)
            _points.Remove(point);
        return Task.CompletedTask;
    }

    /// <summary>Takes everything that waits in an outbox.</summary>
    public async Task DrainAsync(SeriesOutbox outbox, int pointsPerWrite = 100)
    {
        var sender = new SeriesSender(outbox, this, pointsPerWrite, TimeProvider.System, () => 0);
        while (outbox.Pending > 0)
            await sender.SendAsync(CancellationToken.None);
    }

    /// <summary>The fields of a line as they stand in it.</summary>
    public static IReadOnlyDictionary<string, string> FieldsOf(string line) =>
        Split(Split(line, ' ')[1], ',').Select(part => Split(part, '=')).ToDictionary(sides => sides[0], sides => sides[1], StringComparer.Ordinal);

    private void Answer()
    {
        if (Answers.TryDequeue(out var status) && status is { } refused)
            throw new SeriesRefusedException(refused, "refused by the test", null, null);
    }

    // At the sign, but not where a backslash stands before it or within double quotes.
    private static List<string> Split(string text, char sign)
    {
        var parts = new List<string>();
        var quoted = false;
        var from = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\\')
            {
                i++;
            }
            else if (text[i] == '"')
            {
                quoted = !quoted;
            }
            else if (text[i] == sign && !quoted)
            {
                parts.Add(text[from..i]);
                from = i + 1;
            }
        }

        parts.Add(text[from..]);
        return parts;
    }
}
