using System.Runtime.CompilerServices;

namespace GaitWatch;

/// <summary>Cuts a recording into parts that end with a line.</summary>
internal static class LineChunks
{
    /// <summary>Reads the parts one after another.</summary>
    /// <param name="recording">Lines, ended by a line feed; the last may lack it.</param>
    /// <param name="size">Bytes after which a part ends with its line; a longer line makes a longer part.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <returns>Each part and how many lines it has, empty ones counted.</returns>
    public static async IAsyncEnumerable<(ReadOnlyMemory<byte> Bytes, int Lines)> ReadAsync(
        Stream recording, int size, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var buffer = new byte[size];
        var held = 0;
        while (true)
        {
            if (held == buffer.Length)
                Array.Resize(ref buffer, buffer.Length * 2);
            var read = await recording.ReadAsync(buffer.AsMemory(held), cancellation);
            var end = held + read;
            if (read > 0 && end < size)
            {
                held = end;
                continue;
            }

            var cut = read == 0 ? end : Array.LastIndexOf(buffer, (byte)'\n', end - 1, end) + 1;
            if (cut > 0)
            {
                var unended = buffer[cut - 1] != (byte)'\n' ? 1 : 0;
                // The part leaves with its array: the receiver may still be sending it while the next one is read.
                var part = buffer;
                yield return (part.AsMemory(0, cut), part.AsSpan(0, cut).Count((byte)'\n') + unended);
                buffer = new byte[Math.Max(size, end - cut + 1)];
                part.AsSpan(cut, end - cut).CopyTo(buffer);
            }

            held = end - cut;
            if (read == 0)
                yield break;
        }
    }
}
