using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace GaitWatch.Lameness;

/// <summary>Plain values as their bytes, little-endian, so that a restored state is the saved one to the last bit.</summary>
internal static class StateBytes
{
    public static void Put<T>(this BinaryWriter writer, T value) where T : unmanaged =>
        writer.Write(MemoryMarshal.AsBytes(new ReadOnlySpan<T>(in value)));

    public static T Take<T>(this BinaryReader reader) where T : unmanaged
    {
        T value = default;
        reader.BaseStream.ReadExactly(MemoryMarshal.AsBytes(new Span<T>(ref value)));
        return value;
    }

    public static void PutAll<T>(this BinaryWriter writer, List<T> values) where T : unmanaged
    {
        writer.Write(values.Count);
        writer.Write(MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(values)));
    }

    /// <exception cref="FormatException">More values than there can be.</exception>
    public static void TakeAll<T>(this BinaryReader reader, List<T> values, int most) where T : unmanaged
    {
        var count = reader.ReadInt32();
        if (count < 0 || count > most)
            throw new FormatException($"A saved list of {Unsafe.SizeOf<T>()}-byte values holds {count}, but can hold 0 to {most}.");
        values.Clear();
        for (var i = 0; i < count; i++)
            values.Add(reader.Take<T>());
    }
}
