namespace GaitWatch.Store;

/// <summary>Puts points and deletions into the outbox within the writer's transaction, in the order in which they have to arrive.</summary>
internal sealed class OutboxWriter(Writer writer, TimeProvider time)
{
    private readonly long _now = time.GetUtcNow().ToMs();

    /// <summary>How many points and deletions were put in.</summary>
    public int Added { get; private set; }

    public void Add(PointDiff diff)
    {
        foreach (var deletion in diff.Deletions)
            Add(deletion);
        Add(diff.Points);
    }

    public void Add(SeriesDeletion deletion) => Insert(0, StoreJson.Write(deletion), 1);

    public void Add(IReadOnlyCollection<SeriesPoint> points)
    {
        if (points.Count > 0)
            Insert(points.Count, string.Join('\n', points.Select(point => point.Line)), points.Count);
    }

    private void Insert(int points, string body, int counted)
    {
        writer.Execute("""INSERT INTO outbox("WrittenAt", "Points", "Body") VALUES (@0, @1, @2)""", _now, points, body);
        Added += counted;
    }
}
