namespace GaitWatch.Store;

/// <summary>Which part of a list is wanted.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Size">Items a page.</param>
public readonly record struct Page(int Number, int Size)
{
    /// <summary>The whole list.</summary>
    public static Page All { get; } = new(1, int.MaxValue);

    internal int Skip => (int)Math.Min(int.MaxValue, (long)(Number - 1) * Size);
}
