namespace GaitWatch.Gait;

/// <summary>
/// Feet beyond an edge that may press on the plate without being noticed. A hind foot before the entry edge adds to what the fore foot a stride ahead
/// carries, a fore foot beyond the exit edge to the hind foot a stride behind; where one must stand near the edge and was not found, the
/// other's impulse is the less sure.
/// </summary>
internal static class UnseenFeet
{
    /// <summary>Error of the impulse, as a part of it: less than draws the pressure so far aside that the foot is found.</summary>
    private const double Error = 0.004;

    /// <summary>Middle of the strip in which such a foot stands, metres beyond the edge: half of it or more is off the plate.</summary>
    private const double BeyondMetres = 0.02;

    /// <summary>Half the width of that strip with what a place is mistaken by, metres.</summary>
    private const double NearMetres = 0.05;

    /// <summary>Variance of a foot's impulse on that account, as a part of the square of the impulse.</summary>
    /// <param name="foot">A foot.</param>
    /// <param name="strideMetres">How far apart the feet of one side stand.</param>
    /// <param name="plateMetres">Length of the plate.</param>
    public static double Variance(FootOnPlate foot, double strideMetres, double plateMetres)
    {
        var isBehindUnseen = foot.IsFore == true && foot.ContactEvent != FootEvent.Transfer && IsNear(strideMetres - foot.Line.Middle);
        var isAheadUnseen = foot.IsFore == false && foot.LiftEvent != FootEvent.Transfer && IsNear(foot.Line.Middle + strideMetres - plateMetres);
        return isBehindUnseen || isAheadUnseen ? Error * Error : 0;
    }

    private static bool IsNear(double beyondMetres) => Math.Abs(beyondMetres - BeyondMetres) < NearMetres;

    /// <summary>The mean way from a hind foot to the fore foot of its side that stands with it, metres; null when no two stood together on a plate.</summary>
    public static double? StrideMetres(CrossingFeet feet)
    {
        double sum = 0;
        var count = 0;
        foreach (var side in (ReadOnlySpan<List<FootOnPlate>>)[feet.Left, feet.Right])
        {
            for (var k = 0; k + 1 < side.Count; k++)
            {
                if (side[k].LiftEvent != FootEvent.Transfer || !side[k].IsWhole || !side[k + 1].IsWhole)
                    continue;
                sum += side[k + 1].Line.Middle - side[k].Line.Middle;
                count++;
            }
        }

        return count == 0 ? null : sum / count;
    }
}
