namespace GaitWatch.Herd;

/// <summary>Orders numbers in names as a person does: pen 2 before pen 10, cow 87 before cow 417.</summary>
public static class NaturalOrder
{
    /// <summary>The comparer; digits compare as numbers, all else by ordinal.</summary>
    public static IComparer<string> Comparer { get; } = Comparer<string>.Create(Compare);

    private static int Compare(string left, string right)
    {
        int i = 0, j = 0;
        while (i < left.Length && j < right.Length)
        {
            if (char.IsAsciiDigit(left[i]) && char.IsAsciiDigit(right[j]))
            {
                var a = Digits(left, ref i);
                var b = Digits(right, ref j);
                var byLength = a.Length.CompareTo(b.Length);
                var order = byLength != 0 ? byLength : a.CompareTo(b, StringComparison.Ordinal);
                if (order != 0)
                    return order;
            }
            else if (left[i] != right[j])
            {
                return left[i].CompareTo(right[j]);
            }
            else
            {
                i++;
                j++;
            }
        }

        var rest = (left.Length - i).CompareTo(right.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(left, right);
    }

    private static ReadOnlySpan<char> Digits(string text, ref int at)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return text.AsSpan(start, at - start).TrimStart('0');
    }
}
