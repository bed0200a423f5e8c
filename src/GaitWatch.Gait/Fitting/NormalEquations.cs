namespace GaitWatch.Gait;

/// <summary>
/// Weighted linear least squares gathered row by row, solved by Cholesky's decomposition. Small and without waste, for it is solved for
/// many weights a crossing.
/// </summary>
/// <remarks>
/// The targets stand as one more unknown below the others: with [A r; r' s] for the normal matrix A, the right side r and the targets'
/// squares s, eliminating the unknowns from it leaves s - r' A^-1 r, the squares the solution leaves. Eliminating only the first of them leaves
/// the equations of the rest, of the same form.
/// </remarks>
internal sealed class NormalEquations
{
    /// <summary>Lower triangle by rows; the upper is the same.</summary>
    private readonly double[] _entries;

    /// <summary>Cholesky's factor of as many columns as were eliminated, by rows likewise.</summary>
    private readonly double[] _factor;

    private double _logOfEliminated;

    /// <param name="size">Number of unknowns.</param>
    public NormalEquations(int size)
    {
        Size = size;
        _entries = new double[Row(size + 1)];
        _factor = new double[Row(size + 1)];
        Solution = new double[size];
    }

    /// <summary>Number of unknowns.</summary>
    public int Size { get; }

    /// <summary>The unknowns, once solved.</summary>
    public double[] Solution { get; }

    /// <summary>Sum of the weighted squares that the solution leaves.</summary>
    public double Left { get; private set; }

    /// <summary>Logarithm of the matrix's determinant once solved, that of the unknowns eliminated before included.</summary>
    public double LogDeterminant { get; private set; }

    /// <summary>Empties the equations.</summary>
    public void Clear()
    {
        Array.Clear(_entries);
        _logOfEliminated = 0;
    }

    /// <summary>Becomes a copy of other equations of as many unknowns.</summary>
    public void Become(NormalEquations other)
    {
        other._entries.CopyTo(_entries, 0);
        _logOfEliminated = other._logOfEliminated;
    }

    /// <summary>Adds the row: values . unknowns = target, with one standard error.</summary>
    public void Add(ReadOnlySpan<double> values, double target, double error)
    {
        var weight = 1 / (error * error);
        for (var a = 0; a < Size; a++)
        {
            if (values[a] == 0)
                continue;
            var part = weight * values[a];
            var row = _entries.AsSpan(Row(a), a + 1);
            for (var b = 0; b < row.Length; b++)
                row[b] += part * values[b];
        }

        var targets = _entries.AsSpan(Row(Size), Size + 1);
        for (var b = 0; b < Size; b++)
            targets[b] += weight * target * values[b];
        targets[Size] += weight * target * target;
    }

    /// <summary>Adds other equations of the same unknowns, all their weights times a factor.</summary>
    public void Add(NormalEquations other, double factor)
    {
        var from = other._entries;
        for (var k = 0; k < _entries.Length && k < from.Length; k++)
            _entries[k] += factor * from[k];
    }

    /// <summary>Eliminates the first unknowns and writes the equations of the rest; false when the matrix is not positive definite.</summary>
    /// <param name="rest">Takes them; its size says how many unknowns stay.</param>
    public bool Eliminate(NormalEquations rest)
    {
        var first = Size - rest.Size;
        if (!Factor(first))
            return false;
        for (var a = first; a <= Size; a++)
        {
            for (var b = first; b <= a; b++)
                rest._entries[Row(a - first) + b - first] = _entries[Row(a) + b] - Dot(a, b, first);
        }

        rest._logOfEliminated = LogDeterminant;
        return true;
    }

    /// <summary>Solves; false when the matrix is not positive definite.</summary>
    public bool Solve()
    {
        if (!Factor(Size))
            return false;
        Left = _entries[^1] - Dot(Size, Size, Size);
        var solved = _factor.AsSpan(Row(Size), Size);
        for (var a = Size - 1; a >= 0; a--)
        {
            var sum = solved[a];
            for (var k = a + 1; k < Size; k++)
                sum -= _factor[Row(k) + a] * Solution[k];
            Solution[a] = sum / _factor[Row(a) + a];
        }

        return true;
    }

    /// <summary>
    /// Turns the gradient of a figure over the unknowns into one over independent errors of 1, once solved: the covariance of two
    /// figures is the scalar product of theirs.
    /// </summary>
    public void Whiten(Span<double> gradient)
    {
        for (var a = 0; a < Size; a++)
        {
            var line = _factor.AsSpan(Row(a), a + 1);
            var sum = gradient[a];
            for (var k = 0; k < a; k++)
                sum -= line[k] * gradient[k];
            gradient[a] = sum / line[a];
        }
    }

    /// <summary>Adds a part of the covariance of the last unknowns, once solved.</summary>
    /// <param name="to">Its lower triangle by rows.</param>
    /// <param name="count">How many of the last unknowns.</param>
    /// <param name="part">The part.</param>
    public void AddCovariance(Span<double> to, int count, double part)
    {
        // The factor's last square alone makes their covariance: its inverse, transposed, times its inverse.
        Span<double> inverse = stackalloc double[Row(count)];
        var first = Size - count;
        for (var a = 0; a < count; a++)
        {
            var line = _factor.AsSpan(Row(a + first) + first, a + 1);
            for (var b = 0; b <= a; b++)
            {
                var sum = a == b ? 1.0 : 0;
                for (var k = b; k < a; k++)
                    sum -= line[k] * inverse[Row(k) + b];
                inverse[Row(a) + b] = sum / line[a];
            }
        }

        for (var k = 0; k < count; k++)
        {
            var line = inverse.Slice(Row(k), k + 1);
            for (var a = 0; a <= k; a++)
            {
                var each = part * line[a];
                for (var b = 0; b <= a; b++)
                    to[Row(a) + b] += each * line[b];
            }
        }
    }

    /// <summary>Where a row of a lower triangle begins.</summary>
    public static int Row(int row) => row * (row + 1) / 2;

    private bool Factor(int columns)
    {
        LogDeterminant = _logOfEliminated;
        for (var a = 0; a <= Size; a++)
        {
            var line = _factor.AsSpan(Row(a), a + 1);
            for (var b = 0; b <= a && b < columns; b++)
            {
                var above = _factor.AsSpan(Row(b), b + 1);
                var sum = _entries[Row(a) + b];
                for (var k = 0; k < b; k++)
                    sum -= line[k] * above[k];
                if (a != b)
                {
                    line[b] = sum / above[b];
                    continue;
                }

                if (!(sum > 0) || !double.IsFinite(sum))
                    return false;
                line[a] = Math.Sqrt(sum);
                LogDeterminant += Math.Log(sum);
            }
        }

        return true;
    }

    private double Dot(int a, int b, int columns)
    {
        var first = _factor.AsSpan(Row(a), columns);
        var second = _factor.AsSpan(Row(b), columns);
        var sum = 0.0;
        for (var k = 0; k < first.Length; k++)
            sum += first[k] * second[k];
        return sum;
    }
}
