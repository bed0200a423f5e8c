namespace GaitWatch.Benchmarks;

/// <summary>A small table on the console.</summary>
internal sealed class FigureTable(params string[] columns)
{
    private readonly List<string[]> _rows = [columns];

    public void Add(params string[] cells) => _rows.Add(cells);

    public void Write()
    {
        var widths = columns.Select((_, column) => _rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in _rows)
            Console.WriteLine(string.Join("  ", row.Select((cell, column) => column == 0 ? cell.PadRight(widths[column]) : cell.PadLeft(widths[column]))).TrimEnd());
    }
}
