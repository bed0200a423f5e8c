namespace GaitWatch.Lameness;

/// <summary>A 3 x 3 matrix of doubles, row by row. A matrix library allocates; this is used some hundred times a passage.</summary>
internal readonly record struct Matrix3(
    double Xx, double Xy, double Xz,
    double Yx, double Yy, double Yz,
    double Zx, double Zy, double Zz)
{
    public static Matrix3 Zero => default;

    public static Matrix3 Diagonal(double x, double y, double z) => new(x, 0, 0, 0, y, 0, 0, 0, z);

    /// <summary>The matrix a b'.</summary>
    public static Matrix3 Outer(Vector3 a, Vector3 b) => new(
        a.X * b.X, a.X * b.Y, a.X * b.Z,
        a.Y * b.X, a.Y * b.Y, a.Y * b.Z,
        a.Z * b.X, a.Z * b.Y, a.Z * b.Z);

    /// <summary>The larger of each two values on the diagonal.</summary>
    public static Matrix3 Larger(in Matrix3 a, in Matrix3 b) => Diagonal(Math.Max(a.Xx, b.Xx), Math.Max(a.Yy, b.Yy), Math.Max(a.Zz, b.Zz));

    /// <summary>By how much each value of one matrix's diagonal exceeds the other's; 0 where it does not.</summary>
    public static Matrix3 Excess(in Matrix3 a, in Matrix3 b) => Diagonal(Math.Max(a.Xx - b.Xx, 0), Math.Max(a.Yy - b.Yy, 0), Math.Max(a.Zz - b.Zz, 0));

    public Vector3 DiagonalVector => new(Xx, Yy, Zz);

    public double Determinant =>
        (Xx * ((Yy * Zz) - (Yz * Zy))) - (Xy * ((Yx * Zz) - (Yz * Zx))) + (Xz * ((Yx * Zy) - (Yy * Zx)));

    public static Matrix3 operator +(Matrix3 a, Matrix3 b) => new(
        a.Xx + b.Xx, a.Xy + b.Xy, a.Xz + b.Xz,
        a.Yx + b.Yx, a.Yy + b.Yy, a.Yz + b.Yz,
        a.Zx + b.Zx, a.Zy + b.Zy, a.Zz + b.Zz);

    public static Matrix3 operator -(Matrix3 a, Matrix3 b) => a + (-1 * b);

    public static Matrix3 operator *(double s, Matrix3 a) => new(
        s * a.Xx, s * a.Xy, s * a.Xz,
        s * a.Yx, s * a.Yy, s * a.Yz,
        s * a.Zx, s * a.Zy, s * a.Zz);

    public static Vector3 operator *(Matrix3 a, Vector3 v) => new(
        (a.Xx * v.X) + (a.Xy * v.Y) + (a.Xz * v.Z),
        (a.Yx * v.X) + (a.Yy * v.Y) + (a.Yz * v.Z),
        (a.Zx * v.X) + (a.Zy * v.Y) + (a.Zz * v.Z));

    public static Matrix3 operator *(Matrix3 a, Matrix3 b) => new(
        (a.Xx * b.Xx) + (a.Xy * b.Yx) + (a.Xz * b.Zx), (a.Xx * b.Xy) + (a.Xy * b.Yy) + (a.Xz * b.Zy), (a.Xx * b.Xz) + (a.Xy * b.Yz) + (a.Xz * b.Zz),
        (a.Yx * b.Xx) + (a.Yy * b.Yx) + (a.Yz * b.Zx), (a.Yx * b.Xy) + (a.Yy * b.Yy) + (a.Yz * b.Zy), (a.Yx * b.Xz) + (a.Yy * b.Yz) + (a.Yz * b.Zz),
        (a.Zx * b.Xx) + (a.Zy * b.Yx) + (a.Zz * b.Zx), (a.Zx * b.Xy) + (a.Zy * b.Yy) + (a.Zz * b.Zy), (a.Zx * b.Xz) + (a.Zy * b.Yz) + (a.Zz * b.Zz));

    public Matrix3 Transposed() => new(Xx, Yx, Zx, Xy, Yy, Zy, Xz, Yz, Zz);

    /// <summary>The mean of the matrix and its transpose: takes off what rounding has done to a covariance.</summary>
    public Matrix3 Symmetrised() => 0.5 * (this + Transposed());

    /// <summary>The inverse by cofactors; the matrix is a covariance and so far from singular.</summary>
    public Matrix3 Inverse()
    {
        var s = 1 / Determinant;
        return new Matrix3(
            s * ((Yy * Zz) - (Yz * Zy)), s * ((Xz * Zy) - (Xy * Zz)), s * ((Xy * Yz) - (Xz * Yy)),
            s * ((Yz * Zx) - (Yx * Zz)), s * ((Xx * Zz) - (Xz * Zx)), s * ((Xz * Yx) - (Xx * Yz)),
            s * ((Yx * Zy) - (Yy * Zx)), s * ((Xy * Zx) - (Xx * Zy)), s * ((Xx * Yy) - (Xy * Yx)));
    }

    /// <summary>v' M v.</summary>
    public double Quadratic(Vector3 v) => v.Dot(this * v);
}
