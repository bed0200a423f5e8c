namespace GaitWatch.Lameness;

/// <summary>A crossing as its neighbours on the platform need it, to ask whether tags were exchanged.</summary>
/// <param name="Cow">Number of the cow whose tag was read.</param>
/// <param name="Value">Balances.</param>
/// <param name="LogWeight">Natural logarithm of the weight, kg; NaN when it was not measured.</param>
/// <param name="Ticks">When, UTC ticks.</param>
internal sealed record Crossed(string Cow, Vector3 Value, double LogWeight, long Ticks)
{
    /// <summary>Cows further apart than this did not walk one behind the other.</summary>
    private static readonly long _nextTicks = TimeSpan.FromMinutes(3).Ticks;

    /// <summary>Whether another cow walked right before or behind.</summary>
    public bool IsNextTo(Crossed other) => Cow != other.Cow && Math.Abs(Ticks - other.Ticks) <= _nextTicks;

    public static void Save(BinaryWriter writer, Crossed? crossed)
    {
        writer.Write(crossed is not null);
        if (crossed is null)
            return;
        writer.Write(crossed.Cow);
        writer.Put(crossed.Value);
        writer.Write(crossed.LogWeight);
        writer.Write(crossed.Ticks);
    }

    public static Crossed? Load(BinaryReader reader) =>
        reader.ReadBoolean() ? new Crossed(reader.ReadString(), reader.Take<Vector3>(), reader.ReadDouble(), reader.ReadInt64()) : null;
}
