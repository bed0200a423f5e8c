namespace GaitWatch.Gait;

/// <summary>
/// Weighted linear least squares gathered row by row, solved by Cholesky's decomposition. Small and without waste, for it is solved for
/// many weights a crossing.
/// </summary>
internal sealed class NormalEquations
{
    private readonly double[] _matrix;
    private readonly double[] _right;
    private readonly double[] _factor;
    private double _squares;

    /// <param name="size">Number of unknowns.</param>
    public NormalEquations(int size)
    {
        Size = size;
        _matrix = new double[size * size];
        _factor = new double[size * size];
        _right = new double[size];
        Solution = new double[size];
    }

    /// <summary>Number of unknowns.</summary>
    public int Size { get; }

    /// <summary>The unknowns, once solved.</summary>
    public double[] Solution { get; }

    /// <summary>Sum of the weighted squares that the solution leaves.</summary>
    public double Left { get; private set; }

    /// <summary>Logarithm of the matrix's determinant, once solved.</summary>
    public double LogDeterminant { get; private set; }

    /// <summary>Empties the equations.</summary>
    public void Clear()
    {
        Array.Clear(_matrix);
        Array.Clear(_right);
        _squares = 0;
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
            _right[a] += part * target;
            // The lower half; the upper is the same.
            for (var b = 0; b <= a; b++)
                _matrix[(a * Size) + b] += part * values[b];
        }

        _squares += weight * target * target;
    }

    /// <summary>Adds other equations of the same unknowns, all their weights times a factor.</summary>
    public void Add(NormalEquations other, double factor)
    {
        for (var k = 0; k < _matrix.Length; k++)
            _matrix[k] += factor * other._matrix[k];
        for (var k = 0; k < _right.Length; k++)
            _right[k] += factor * other._right[k];
        _squares += factor * other._squares;
    }

    /// <summary>Solves; false when the matrix is not positive definite.</summary>
    public bool Solve()
    {
        LogDeterminant = 0;
        for (var a = 0; a < Size; a++)
        {
            var line = _factor.AsSpan(a * Size, a + 1);
            for (var b = 0; b <= a; b++)
            {
                var above = _factor.AsSpan(b * Size, b + 1);
                var sum = _matrix[(a * Size) + b];
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

        _right.CopyTo(Solution, 0);
        Substitute(Solution);
        Left = _squares;
        for (var a = 0; a < Size; a++)
            Left -= Solution[a] * _right[a];
        return true;
    }

    /// <summary>Adds a part of the inverse matrix, the unknowns' covariance.</summary>
    public void AddInverse(double[,] to, double part)
    {
        Span<double> column = stackalloc double[Size];
        for (var b = 0; b < Size; b++)
        {
            column.Clear();
            column[b] = part;
            Substitute(column);
            for (var a = 0; a < Size; a++)
                to[a, b] += column[a];
        }
    }

    private void Substitute(Span<double> values)
    {
        for (var a = 0; a < Size; a++)
        {
            var sum = values[a];
            for (var k = 0; k < a; k++)
                sum -= _factor[(a * Size) + k] * values[k];
            values[a] = sum / _factor[(a * Size) + a];
        }

        for (var a = Size - 1; a >= 0; a--)
        {
            var sum = values[a];
            for (var k = a + 1; k < Size; k++)
                sum -= _factor[(k * Size) + a] * values[k];
            values[a] = sum / _factor[(a * Size) + a];
        }
    }
}
