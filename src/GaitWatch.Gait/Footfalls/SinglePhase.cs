namespace GaitWatch.Gait;

/// <summary>The part of a stance in which a foot is alone on its plate.</summary>
internal static class SinglePhase
{
    /// <summary>First and last sample of it; the first may exceed the last.</summary>
    public static (double From, double To) Of(List<FootOnPlate> feet, int k)
    {
        var from = feet[k].Contact;
        var to = feet[k].Lift;
        if (k > 0)
            from = Math.Max(from, feet[k - 1].Lift);
        if (k + 1 < feet.Count)
            to = Math.Min(to, feet[k + 1].Contact);
        return (from, to);
    }
}
