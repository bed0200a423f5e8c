using System.Text;

namespace GaitWatch.Tests;

public class LineChunksTests
{
    [Theory]
    [InlineData("", 8, "")]
    [InlineData("a\nb\n", 8, "a\nb\n")]
    [InlineData("aaaa\nbbbb\ncccc\n", 8, "aaaa\n|bbbb\n|cccc\n")]
    [InlineData("aaa\nbbb\nccc", 8, "aaa\nbbb\n|ccc")]
    [InlineData("a line longer than a part\nb\n", 8, "a line longer than a part\nb\n")]
    [InlineData("no end", 4, "no end")]
    [InlineData("\n\n\n", 2, "\n\n|\n")]
    public async Task Parts_end_with_a_line_and_lose_nothing(string text, int size, string parts)
    {
        // Whatever the stream gives at a time.
        foreach (var most in (int[])[1, 3, 1000])
        {
            var read = new List<(string Text, int Lines)>();
            await foreach (var (bytes, lines) in LineChunks.ReadAsync(new Trickle(Encoding.UTF8.GetBytes(text), most), size, default))
                read.Add((Encoding.UTF8.GetString(bytes.Span), lines));
            Assert.Equal(text, string.Concat(read.Select(part => part.Text)));
            Assert.All(read.SkipLast(1), part => Assert.EndsWith("\n", part.Text, StringComparison.Ordinal));
            Assert.All(read, part => Assert.Equal(part.Text.Count(letter => letter == '\n') + (part.Text.EndsWith('\n') ? 0 : 1), part.Lines));
            if (most == 1000)
                Assert.Equal(parts, string.Join('|', read.Select(part => part.Text)));
        }
    }

    private sealed class Trickle(byte[] bytes, int most) : MemoryStream(bytes)
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            base.ReadAsync(buffer[..Math.Min(most, buffer.Length)], cancellationToken);
    }
}
