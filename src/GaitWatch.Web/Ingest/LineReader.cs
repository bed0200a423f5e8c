using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;

namespace GaitWatch.Web;

/// <summary>Cuts a stream into lines without holding more than one of them.</summary>
internal static class LineReader
{
    /// <summary>Longest line that is read, bytes; a longer one is passed over and comes out as null.</summary>
    public const int LongestLine = 16 * 1024 * 1024;

    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    public static async IAsyncEnumerable<(long Line, byte[]? Content)> ReadAsync(PipeReader reader, [EnumeratorCancellation] CancellationToken cancellation)
    {
        long line = 0;
        var tooLong = false;
        while (true)
        {
            var read = await reader.ReadAsync(cancellation);
            var rest = read.Buffer;
            while (rest.PositionOf((byte)'\n') is { } end)
            {
                line++;
                yield return (line, tooLong ? null : Content(rest.Slice(0, end), line));
                tooLong = false;
                rest = rest.Slice(rest.GetPosition(1, end));
            }

            if (read.IsCompleted)
            {
                if (tooLong || !rest.IsEmpty)
                    yield return (line + 1, tooLong ? null : Content(rest, line + 1));
                reader.AdvanceTo(rest.End);
                yield break;
            }

            if (rest.Length > LongestLine)
            {
                tooLong = true;
                rest = rest.Slice(rest.End);
            }

            reader.AdvanceTo(rest.Start, rest.End);
        }
    }

    private static byte[]? Content(ReadOnlySequence<byte> line, long number)
    {
        if (line.Length > LongestLine)
            return null;
        var bytes = line.ToArray().AsSpan();
        if (number == 1 && bytes.StartsWith(ByteOrderMark))
            bytes = bytes[ByteOrderMark.Length..];
        return bytes.TrimEnd((byte)'\r').ToArray();
    }
}
