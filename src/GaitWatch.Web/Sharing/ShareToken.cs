using System.Buffers.Binary;
using System.Buffers.Text;
using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;

namespace GaitWatch.Web;

/// <summary>What a share link says: for which visit it was given out, and when.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="IssuedAt">When it was given out, to the millisecond.</param>
/// <remarks>
/// 12 bytes, the day (days since 1 January of year 1) and the instant (milliseconds since 1970), big-endian, and the first 16
/// bytes of their HMAC with SHA-256 (RFC 2104 allows half of the hash, RFC 4868 names this one HMAC-SHA-256-128), all in base64url (RFC 4648).
/// </remarks>
internal sealed record ShareToken(DateOnly Visit, DateTimeOffset IssuedAt)
{
    private const int SaidBytes = 12;
    private const int SignatureBytes = 16;

    /// <summary>Writes it, signed.</summary>
    public string Sign(ReadOnlySpan<byte> key)
    {
        Span<byte> bytes = stackalloc byte[SaidBytes + SignatureBytes];
        BinaryPrimitives.WriteInt32BigEndian(bytes, Visit.DayNumber);
        BinaryPrimitives.WriteInt64BigEndian(bytes[4..], IssuedAt.ToUnixTimeMilliseconds());
        Signature(key, bytes[..SaidBytes], bytes[SaidBytes..]);
        return Base64Url.EncodeToString(bytes);
    }

    /// <summary>Reads one; false when it is none, or was not signed with this key.</summary>
    public static bool TryRead(string? text, ReadOnlySpan<byte> key, [NotNullWhen(true)] out ShareToken? token)
    {
        token = null;
        Span<byte> bytes = stackalloc byte[SaidBytes + SignatureBytes];
        if (text is null || text.Length != Base64Url.GetEncodedLength(bytes.Length) || !Base64Url.IsValid(text) || !Base64Url.TryDecodeFromChars(text, bytes, out var read) || read != bytes.Length)
            return false;
        Span<byte> right = stackalloc byte[SignatureBytes];
        Signature(key, bytes[..SaidBytes], right);
        if (!CryptographicOperations.FixedTimeEquals(right, bytes[SaidBytes..]))
            return false;
        // Signed by us: the day and the instant are ones that were written.
        token = new ShareToken(
            DateOnly.FromDayNumber(BinaryPrimitives.ReadInt32BigEndian(bytes)),
            DateTimeOffset.FromUnixTimeMilliseconds(BinaryPrimitives.ReadInt64BigEndian(bytes[4..])));
        return true;
    }

    private static void Signature(ReadOnlySpan<byte> key, ReadOnlySpan<byte> said, Span<byte> signature)
    {
        Span<byte> whole = stackalloc byte[HMACSHA256.HashSizeInBytes];
        HMACSHA256.HashData(key, said, whole);
        whole[..SignatureBytes].CopyTo(signature);
    }
}
