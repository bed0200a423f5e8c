using GaitWatch.Gait;

namespace GaitWatch.Lameness;

// What is kept of her between runs.
internal sealed partial class CowWatch
{
    public void Save(BinaryWriter writer)
    {
        writer.Write(Name);
        _settled.Save(writer);
        writer.Put(_identity);
        _history.Save(writer);
        writer.Put(_designedAt);
        writer.Write(_designDay);
        writer.Write(_week);
        writer.Write(_peak);
        writer.Write(_lastFalse);
        writer.Write((byte)_eased);
        writer.Write(_easedUntil);
        writer.Write(_pending is not null);
        _pending?.Save(writer);
        writer.Write(_troubles.Count);
        foreach (var trouble in _troubles)
            trouble.Save(writer);
    }

    public static CowWatch Load(BinaryReader reader, HerdModel herd)
    {
        var name = reader.ReadString();
        var cow = new CowWatch(name, CowEvidence.Load(reader), herd)
        {
            _identity = reader.Take<Identity>(),
            _history = DayHistory.Load(reader),
        };
        cow._designedAt = reader.Take<Vector3>();
        Designs.Fill(Balances.FromVector(cow._designedAt), cow._designs);
        cow._designDay = reader.ReadInt64();
        cow._week = reader.ReadInt64();
        cow._peak = reader.ReadDouble();
        cow._lastFalse = reader.ReadInt64();
        cow._eased = (Leg)reader.ReadByte();
        cow._easedUntil = reader.ReadInt64();
        if (reader.ReadBoolean())
            cow._pending = Pending.Load(reader);
        var troubles = reader.ReadInt32();
        for (var i = 0; i < troubles; i++)
            cow._troubles.Add(Trouble.Load(reader));
        return cow;
    }
}
