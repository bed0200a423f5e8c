namespace GaitWatch.Lameness;

/// <summary>A cow's newest passage, judged so far only by those of its session that came before it.</summary>
/// <param name="Reading">The passage.</param>
/// <param name="Platform">The platform crossed.</param>
/// <param name="Common">The common movement as it stood.</param>
/// <param name="Crossed">The passage as her neighbours see it.</param>
internal sealed record Pending(Reading Reading, string Platform, Session Common, Crossed Crossed)
{
    /// <summary>The cow behind, once she has crossed; null when there was none close by.</summary>
    public Crossed? Behind { get; init; }

    public void Save(BinaryWriter writer)
    {
        writer.Put(Reading);
        writer.Write(Platform);
        writer.Put(Common);
        Crossed.Save(writer, Crossed);
        Crossed.Save(writer, Behind);
    }

    public static Pending Load(BinaryReader reader) =>
        new(reader.Take<Reading>(), reader.ReadString(), reader.Take<Session>(), Crossed.Load(reader)!) { Behind = Crossed.Load(reader) };
}
