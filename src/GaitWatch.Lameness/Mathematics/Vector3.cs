namespace GaitWatch.Lameness;

/// <summary>Three doubles. A matrix library allocates; this is used some hundred times a passage.</summary>
internal readonly record struct Vector3(double X, double Y, double Z)
{
    public static Vector3 Zero => default;

    public static Vector3 operator +(Vector3 a, Vector3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vector3 operator -(Vector3 a, Vector3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vector3 operator *(double s, Vector3 a) => new(s * a.X, s * a.Y, s * a.Z);

    public double Dot(Vector3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);
}
