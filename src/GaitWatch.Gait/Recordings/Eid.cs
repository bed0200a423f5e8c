using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GaitWatch.Gait;

/// <summary>
/// An animal's electronic identification: 15 decimal digits by ISO 11784, a 3-digit country (ISO 3166-1 numeric) or maker
/// code (900 to 998; 999 marks a test transponder) and a national part of 12 digits that must fit its 38 bits.
/// </summary>
public readonly record struct Eid : IComparable<Eid>
{
    /// <summary>Largest national part: the code has 38 bits for it (ISO 11784).</summary>
    public const long LargestNationalPart = (1L << 38) - 1;

    private const long NationalModulus = 1_000_000_000_000;

    private Eid(long value) => Value = value;

    /// <summary>The 15 digits as a number; leading zeros are those of a country below 100.</summary>
    public long Value { get; }

    /// <summary>The country or maker code, 1 to 999.</summary>
    public int CountryOrMaker => (int)(Value / NationalModulus);

    /// <summary>Whether the transponder is marked as one for tests (code 999).</summary>
    public bool IsTest => CountryOrMaker == 999;

    /// <summary>Reads 15 digits.</summary>
    /// <param name="text">The digits, no blanks.</param>
    /// <param name="eid">The code, when true is returned.</param>
    /// <param name="fault">What was found and what would be right, when false is returned.</param>
    public static bool TryParse(string? text, out Eid eid, [NotNullWhen(false)] out string? fault)
    {
        eid = default;
        if (text is null || text.Length != 15 || text.AsSpan().ContainsAnyExceptInRange('0', '9'))
        {
            fault = $"eid is '{Shorten(text)}': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.";
            return false;
        }

        var value = long.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
        var code = value / NationalModulus;
        if (code == 0)
        {
            fault = $"eid is '{text}': it begins with 000; a country code (ISO 3166-1 numeric) or a maker code from 900 to 998 is needed.";
            return false;
        }

        if (value % NationalModulus > LargestNationalPart)
        {
            fault = $"eid is '{text}': its last 12 digits exceed {LargestNationalPart}, the largest number ISO 11784 has room for.";
            return false;
        }

        eid = new Eid(value);
        fault = null;
        return true;
    }

    /// <summary>Reads 15 digits.</summary>
    /// <exception cref="FormatException">The text is no animal code; the message says why.</exception>
    public static Eid Parse(string text) =>
        TryParse(text, out var eid, out var fault) ? eid : throw new FormatException(fault);

    /// <summary>The 15 digits.</summary>
    public override string ToString() => Value.ToString("D15", CultureInfo.InvariantCulture);

    /// <summary>Orders by number.</summary>
    public int CompareTo(Eid other) => Value.CompareTo(other.Value);

    /// <summary>Orders by number.</summary>
    public static bool operator <(Eid left, Eid right) => left.Value < right.Value;

    /// <summary>Orders by number.</summary>
    public static bool operator >(Eid left, Eid right) => left.Value > right.Value;

    /// <summary>Orders by number.</summary>
    public static bool operator <=(Eid left, Eid right) => left.Value <= right.Value;

    /// <summary>Orders by number.</summary>
    public static bool operator >=(Eid left, Eid right) => left.Value >= right.Value;

    private static string? Shorten(string? text) => text is { Length: > 24 } ? text[..24] + "…" : text;
}
