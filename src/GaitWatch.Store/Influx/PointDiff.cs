namespace GaitWatch.Store;

/// <summary>What has to be sent so that InfluxDB, which shows one set of points, shows another.</summary>
/// <param name="Deletions">What has to go first.</param>
/// <param name="Points">What is new or differs, to be written after.</param>
internal readonly record struct PointDiff(IReadOnlyList<SeriesDeletion> Deletions, IReadOnlyList<SeriesPoint> Points)
{
    /// <summary>
    /// Compares two sets. A point written again takes the place of the one with the same measurement, tags and time, field by
    /// field: one that is gone, or has lost a field, must be deleted first.
    /// </summary>
    public static PointDiff Of(IReadOnlyCollection<SeriesPoint> before, IReadOnlyCollection<SeriesPoint> after)
    {
        if (before.Count == 0)
            return new PointDiff([], [.. after]);
        var now = after.ToDictionary(point => point.Key(), StringComparer.Ordinal);
        var deletions = new List<SeriesDeletion>();
        var same = new HashSet<string>(StringComparer.Ordinal);
        foreach (var old in before)
        {
            var key = old.Key();
            if (!now.TryGetValue(key, out var point) || old.Fields.Except(point.Fields).Any())
                deletions.Add(old.Deletion());
            else if (old.Line == point.Line)
                same.Add(key);
        }

        return new PointDiff(deletions, [.. after.Where(point => !same.Contains(point.Key()))]);
    }
}
