namespace GaitWatch.Lameness;

/// <summary>A cow's newest passage, judged so far only by those of its session that came before it.</summary>
/// <param name="Reading">The passage.</param>
/// <param name="Platform">The platform crossed.</param>
/// <param name="Common">The common movement as it stood.</param>
internal sealed record Pending(Reading Reading, string Platform, Session Common)
{
    public void Save(BinaryWriter writer)
    {
        writer.Put(Reading);
        writer.Write(Platform);
        writer.Put(Common);
    }

    public static Pending Load(BinaryReader reader) => new(reader.Take<Reading>(), reader.ReadString(), reader.Take<Session>());
}
