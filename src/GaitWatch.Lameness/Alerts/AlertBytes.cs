using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>An open alert in a saved state.</summary>
internal static class AlertBytes
{
    public static void Save(BinaryWriter writer, Alert alert)
    {
        writer.Write(alert.Cow);
        writer.Write((byte)alert.Pattern);
        writer.Write((byte)alert.Leg);
        writer.Put(alert.LegProbability);
        writer.Write(alert.RaisedAt.UtcTicks);
        writer.Write(alert.OnsetAt.UtcTicks);
        writer.Write(alert.OnsetEarliestAt?.UtcTicks ?? -1);
        writer.Write(alert.OnsetLatestAt?.UtcTicks ?? -1);
        writer.Write(alert.LoadDropPercent);
        writer.Write(alert.LoadDropLowerPercent);
        writer.Write(alert.LoadDropUpperPercent);
        writer.Write((byte)alert.Urgency);
        writer.Write((byte)alert.State);
        writer.Write(alert.Explanation);
    }

    public static Alert Load(BinaryReader reader)
    {
        var cow = reader.ReadString();
        var pattern = (AlertPattern)reader.ReadByte();
        var leg = (Leg)reader.ReadByte();
        var probability = reader.Take<PerLeg<double>>();
        var raisedAt = new DateTimeOffset(reader.ReadInt64(), TimeSpan.Zero);
        return new Alert
        {
            Id = AlertId.Of(cow, pattern, leg, raisedAt),
            Cow = cow,
            Pattern = pattern,
            Leg = leg,
            LegProbability = probability,
            RaisedAt = raisedAt,
            OnsetAt = new DateTimeOffset(reader.ReadInt64(), TimeSpan.Zero),
            OnsetEarliestAt = Instant(reader.ReadInt64()),
            OnsetLatestAt = Instant(reader.ReadInt64()),
            LoadDropPercent = reader.ReadDouble(),
            LoadDropLowerPercent = reader.ReadDouble(),
            LoadDropUpperPercent = reader.ReadDouble(),
            Urgency = (Urgency)reader.ReadByte(),
            State = (AlertState)reader.ReadByte(),
            Explanation = reader.ReadString(),
        };
    }

    private static DateTimeOffset? Instant(long ticks) => ticks < 0 ? null : new DateTimeOffset(ticks, TimeSpan.Zero);
}
