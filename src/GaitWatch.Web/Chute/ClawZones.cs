using System.Collections.Immutable;

namespace GaitWatch.Web;

/// <summary>
/// The zones of the claw map as the chute draws them: a lifted foot seen from behind, its sole towards the trimmer, the heel above,
/// the toe below. Source: the international claw map (Greenough, Vermunt 1991 and later): 0 skin between the claws, 1 white line at
/// the toe, 2 and 3 white line along the outside, 2 nearer the toe, 4 where sole and heel meet, 5 apex of the sole, 6 heel, 7 and 8
/// wall, 9 skin between the claws in front, 10 cleft between the claws at the heel. Zones 11 and 12 are not drawn: their place is to be read from
/// the published figure. The shapes are our own and schematic: each is large enough for a gloved thumb.
/// </summary>
internal static class ClawZones
{
    /// <summary>Width and height of the drawing, in its own units.</summary>
    public const int Width = 336, Height = 400;

    /// <summary>Zones of the left claw of the drawing; the right one mirrors it. The side away from the other claw is on the left.</summary>
    public static ImmutableArray<(int Zone, string Path, int X, int Y)> Claw { get; } =
    [
        (6, "M12 98C4 44 34 6 72 6c40 0 64 36 64 92z", 74, 64),
        (3, "M11 102h55v120H6c-3-42 0-84 5-120z", 37, 170),
        (2, "M6 226h60v84H19C11 282 7 254 6 226z", 38, 276),
        (4, "M70 102h66v104H70z", 103, 162),
        (5, "M70 210h66v100H70z", 103, 268),
        (1, "M20 314h116c-1 42-16 78-38 80C70 396 34 362 20 314z", 86, 358),
    ];

    /// <summary>Zones between the claws.</summary>
    public static ImmutableArray<(int Zone, string Path, int Y)> Between { get; } =
    [
        (10, "M138 30q30-16 60 0v98h-60z", 86),
        (0, "M138 132h60v138h-60z", 208),
        (9, "M138 274h60v96q-30 16-60 0z", 328),
    ];

    /// <summary>Zones that this view does not show: they stand beside it in words.</summary>
    public static ImmutableArray<int> Beside { get; } = [7, 8];

    /// <summary>Every zone that can be chosen.</summary>
    public static ImmutableArray<int> Drawn { get; } = [.. Between.Select(part => part.Zone).Concat(Claw.Select(part => part.Zone)).Concat(Beside).Order()];
}
