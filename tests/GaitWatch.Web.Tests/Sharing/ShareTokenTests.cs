using System.Buffers.Text;
using CsCheck;

namespace GaitWatch.Web.Tests;

public sealed class ShareTokenTests
{
    private static readonly byte[] s_key = [.. Enumerable.Range(1, 32).Select(i => (byte)i)];

    [Fact]
    public void What_was_signed_is_read_again()
    {
        Gen.Select(Gen.Int[0, 3_652_058], Gen.Long[0, 4_102_444_800_000]).Sample((day, ms) =>
        {
            var token = new ShareToken(DateOnly.FromDayNumber(day), DateTimeOffset.FromUnixTimeMilliseconds(ms));
            return ShareToken.TryRead(token.Sign(s_key), s_key, out var read) && read == token;
        });
    }

    [Fact]
    public void A_changed_bit_or_another_key_is_no_link()
    {
        var text = new ShareToken(new DateOnly(2026, 6, 12), Some.Now).Sign(s_key);
        var bytes = Base64Url.DecodeFromChars(text);
        for (var bit = 0; bit < bytes.Length * 8; bit++)
        {
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.False(ShareToken.TryRead(Base64Url.EncodeToString(bytes), s_key, out _), $"bit {bit}");
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
        }

        Assert.False(ShareToken.TryRead(text, [.. s_key.Reverse()], out _));
        Assert.All([null, "", text[..^1], text + "A", text.Replace(text[3], '!')], wrong => Assert.False(ShareToken.TryRead(wrong, s_key, out _)));
    }

    [Fact]
    public void The_signature_is_that_of_another_implementation()
    {
        // L: Python 3 hmac and hashlib, key bytes 1 to 32, over the 12 bytes 000b4a1c 00000199 00000000:
        // base64.urlsafe_b64encode(said + hmac.new(key, said, hashlib.sha256).digest()[:16]).
        Assert.Equal("AAtKHAAAAZkAAAAA8Jvgl9gBpSovVlMzY6V7RQ", new ShareToken(DateOnly.FromDayNumber(0x0b4a1c), DateTimeOffset.FromUnixTimeMilliseconds(0x199_0000_0000)).Sign(s_key));
    }
}
