using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>The plates' names on the wire.</summary>
internal static class PlateSides
{
    public static string WireName(this PlateSide side) => side == PlateSide.Left ? "left" : "right";
}
