using System.Globalization;
using System.Runtime.CompilerServices;

namespace GaitWatch.Lameness.Tests.Reference;

/// <summary>Numbers that a general-purpose library computed: reference.csv, made by make_reference.py beside it.</summary>
internal static class ReferenceRows
{
    /// <summary>The rows of one kind, each a queue of numbers.</summary>
    public static IEnumerable<Queue<double>> Of(string kind)
    {
        var rows = File.ReadLines(Path.Combine(Folder(), "reference.csv"))
            .Select(line => line.Split(','))
            .Where(cells => cells[0] == kind)
            .Select(cells => new Queue<double>(cells.Skip(1).Select(c => double.Parse(c, CultureInfo.InvariantCulture))))
            .ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    public static Vector3 Vector(this Queue<double> row) => new(row.Dequeue(), row.Dequeue(), row.Dequeue());

    public static Matrix3 Matrix(this Queue<double> row) => new(
        row.Dequeue(), row.Dequeue(), row.Dequeue(),
        row.Dequeue(), row.Dequeue(), row.Dequeue(),
        row.Dequeue(), row.Dequeue(), row.Dequeue());

    public static void AssertClose(Vector3 expected, Vector3 actual, double tolerance)
    {
        Assert.Equal(expected.X, actual.X, tolerance);
        Assert.Equal(expected.Y, actual.Y, tolerance);
        Assert.Equal(expected.Z, actual.Z, tolerance);
    }

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
