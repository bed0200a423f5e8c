using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Serves a list that may be very long without holding it whole: a year of a herd is some hundred thousand passages.</summary>
internal static class WholeList
{
    private const int Size = 2000;

    public static Page Stretch(int number) => new(number, Size);

    /// <summary>The first stretch, read beforehand so that a failure can still be answered as such, then the others.</summary>
    public static async IAsyncEnumerable<T> InStretchesAsync<T>(Func<Page, Task<IReadOnlyList<T>>> read, IReadOnlyList<T> first)
    {
        var stretch = first;
        for (var number = 1; ; number++)
        {
            foreach (var item in stretch)
                yield return item;
            if (stretch.Count < Size)
                yield break;
            stretch = await read(Stretch(number + 1));
        }
    }
}
