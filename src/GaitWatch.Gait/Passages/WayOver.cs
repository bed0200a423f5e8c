namespace GaitWatch.Gait;

/// <summary>Which way the feet went over the platform.</summary>
internal static class WayOver
{
    /// <summary>A foot set down this much behind the last is a step back, metres: a tracking-up hind foot lands within 10 cm.</summary>
    private const double BackwardMetres = 0.25;

    private const double EdgeMetres = 0.2;

    /// <summary>
    /// Whether the animal left by the entry. Every step forward is ahead of the last on either side, so the foot that leaves last stands
    /// furthest ahead; of one that leaves by the entry it stands furthest back.
    /// </summary>
    public static bool LeftByEntry(CrossingFeet feet)
    {
        // A fore foot at the exit edge leaves before the hind foot behind it, whose fellow lands beyond the edge.
        var inside = feet.Plates.Left.LengthMetres - EdgeMetres;
        var left = feet.Left.FindAll(foot => !(foot.IsFore == true && foot == feet.Left[^1] && foot.Line.Middle > inside));
        var right = feet.Right.FindAll(foot => !(foot.IsFore == true && foot == feet.Right[^1] && foot.Line.Middle > inside));
        if (left.Count > 0 && right.Count > 0)
        {
            var (lastLeft, lastRight) = (LastToLeave(left), LastToLeave(right));
            var (last, other) = lastLeft.Lift > lastRight.Lift ? (lastLeft, lastRight) : (lastRight, lastLeft);
            return last.Line.Middle < other.Line.Middle - BackwardMetres;
        }

        var only = left.Count > 0 ? left : right;
        return only.Count > 1 && LastToLeave(only).Line.Middle < only.Max(foot => foot.Line.Middle) - BackwardMetres;
    }

    /// <summary>
    /// Whether a foot was set down behind the one before it on its plate, or too many followed each other on one spot: a walk sets a fore foot there and
    /// the hind foot after it, which look like one more where both stand a while; a foot that comes back, and leaves again, makes four.
    /// </summary>
    public static bool SteppedBack(CrossingFeet feet) => SteppedBack(feet.Left) || SteppedBack(feet.Right);

    private static bool SteppedBack(List<FootOnPlate> feet)
    {
        for (var k = 0; k + 1 < feet.Count; k++)
        {
            if (feet[k + 1].Line.Middle < feet[k].Line.Middle - BackwardMetres || (k + 3 < feet.Count && IsFollowed(k) && IsFollowed(k + 1) && IsFollowed(k + 2)))
                return true;
        }

        return false;

        bool IsFollowed(int k) =>
            feet[k].LiftEvent == FootEvent.Swap && Math.Abs(feet[k + 1].Line.Middle - feet[k].Line.Middle) < StandingPlaces.SameSpotMetres;
    }

    private static FootOnPlate LastToLeave(List<FootOnPlate> feet)
    {
        var last = feet[0];
        foreach (var foot in feet)
        {
            if (foot.Lift >= last.Lift)
                last = foot;
        }

        return last;
    }
}
