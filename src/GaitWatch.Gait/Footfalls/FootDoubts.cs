namespace GaitWatch.Gait;

/// <summary>Marks the feet whose load could not be told from another's.</summary>
/// <remarks>
/// In a slow walk a hind foot may come down beside the fore foot so long before that leaves that the load hardly dips: the two look like
/// one foot that stands too long. And where places were taken wrongly, the two-foot solution pushes a foot below zero.
/// </remarks>
internal static class FootDoubts
{
    /// <summary>
    /// Stances of one crossing differ by less than this: speed by a third, and a sore leg stands a tenth shorter (common practice, no
    /// source). Two feet taken for one stand 1.7 times as long or more.
    /// </summary>
    private const double LongestPart = 1.45;

    /// <summary>Part of a foot's impulse that may lie below zero: noise, ringing.</summary>
    private const double NegativePart = 0.05;

    /// <summary>A foot cannot stand for more of its stride than this and swing too.</summary>
    private const double MostDuty = 0.88;

    /// <summary>
    /// A foot half over an edge presses on the plate only while its load is on the part that is there: its place seems up to this far inside, metres,
    /// and its stance shorter than this part of the next foot's.
    /// </summary>
    private const double CutPlaceMetres = 0.16;
    private const double CutPart = 0.85;

    /// <summary>
    /// A leg carries alike from one landing to the next, be it sore; near an edge, a footfall with less than this part of the impulse of
    /// the leg's next landing inside has the rest of it on the floor. Changes of pace make up to a fifth (the stride's length; the simulated
    /// walks that brake hardest).
    /// </summary>
    private const double FloorPart = 0.7;

    /// <summary>Marks what the forces and the stances tell.</summary>
    public static void Mark(CrossingFeet feet)
    {
        foreach (var foot in feet.InOrder)
            foot.IsOnEdge |= IsCutShort(foot, feet) || IsPartlyBorne(foot, feet);
        var stances = new List<double>();
        foreach (var foot in feet.InOrder)
        {
            if (!foot.IsOnEdge)
                stances.Add(foot.Lift - foot.Contact);
        }

        stances.Sort();
        // The lower middle: where half of the feet are pairs taken for one, the others tell.
        var usual = stances.Count == 0 ? 0 : stances[(stances.Count - 1) / 2];
        foreach (var foot in feet.InOrder)
        {
            double below = 0, above = 0;
            foreach (var kg in foot.Force)
            {
                below -= Math.Min(0, kg);
                above += Math.Max(0, kg);
            }

            if (!foot.IsOnEdge && (foot.Lift - foot.Contact > LongestPart * usual || below > NegativePart * above))
                foot.IsResolved = false;
        }
    }

    /// <summary>Whether its stance is cut short by an edge, beside the stances of the feet that land next further inside, or landed last.</summary>
    private static bool IsCutShort(FootOnPlate foot, CrossingFeet feet)
    {
        var isAtEntry = foot.Line.Middle < CutPlaceMetres;
        if (foot.IsOnEdge || (!isAtEntry && foot.Line.Middle < feet.Plates.Left.LengthMetres - CutPlaceMetres))
            return false;
        FootOnPlate? beside = null;
        foreach (var other in feet.InOrder)
        {
            if (other.Side == foot.Side || other.IsOnEdge)
                continue;
            // In order of contact: the first after it, or the last before it.
            if (isAtEntry && other.Contact > foot.Contact)
            {
                beside = other;
                break;
            }

            if (!isAtEntry && other.Contact < foot.Contact)
                beside = other;
        }

        return beside is not null && foot.Lift - foot.Contact < CutPart * (beside.Lift - beside.Contact);
    }

    /// <summary>
    /// Whether the floor bears a part of its load. Half a foot that presses beside another a stride ahead may keep its time and seem to stand well
    /// inside, since the little it carries is placed by what the other does to the moment; the load alone tells.
    /// </summary>
    private static bool IsPartlyBorne(FootOnPlate foot, CrossingFeet feet)
    {
        var length = feet.Plates.Left.LengthMetres;
        if (foot.IsOnEdge || (foot.Line.Middle >= CutPlaceMetres && foot.Line.Middle <= length - CutPlaceMetres))
            return false;
        foreach (var other in feet.InOrder)
        {
            if (other.Leg is not null && other.Leg == foot.Leg && other.Line.Middle > CutPlaceMetres && other.Line.Middle < length - CutPlaceMetres
                && foot.ImpulseKgSeconds < FloorPart * other.ImpulseKgSeconds)
                return true;
        }

        return false;
    }

    /// <summary>Marks what the stride time tells: all feet are pairs taken for one.</summary>
    public static void Mark(CrossingFeet feet, StrideClock clock)
    {
        foreach (var foot in feet.InOrder)
        {
            var (contact, lift) = (foot.Contact * feet.Step, foot.Lift * feet.Step);
            if (!foot.IsOnEdge && lift - contact > MostDuty * clock.StrideOf(contact))
                foot.IsResolved = false;
        }
    }
}
