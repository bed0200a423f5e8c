namespace GaitWatch.Lameness;

/// <summary>A <see cref="Vector3"/> in half the memory, for what is kept per cow and rule: seven digits are far more than a passage tells.</summary>
internal readonly record struct SingleVector3(float X, float Y, float Z)
{
    public static SingleVector3 Of(Vector3 v) => new((float)v.X, (float)v.Y, (float)v.Z);

    public Vector3 Wide => new(X, Y, Z);
}
