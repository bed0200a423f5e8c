namespace GaitWatch.Gait;

/// <summary>Feet of one plate that stood on one spot, one after the other.</summary>
/// <param name="X">The spot, metres from the entry edge.</param>
/// <param name="Feet">How many.</param>
internal readonly record struct Visit(double X, int Feet)
{
    /// <summary>A foot set down this much behind the last is a step back, metres: a tracking-up hind foot lands within 10 cm.</summary>
    public const double BackwardMetres = 0.25;

    /// <summary>The visits of a plate, in order.</summary>
    public static List<Visit> Of(List<FootOnPlate> feet)
    {
        var visits = new List<Visit>();
        foreach (var foot in feet)
        {
            if (visits.Count > 0 && Math.Abs(visits[^1].X - foot.PlaceX) < BackwardMetres)
                visits[^1] = visits[^1] with { Feet = visits[^1].Feet + 1 };
            else
                visits.Add(new Visit(foot.PlaceX, 1));
        }

        return visits;
    }
}
