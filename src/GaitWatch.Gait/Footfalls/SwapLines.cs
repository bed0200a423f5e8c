namespace GaitWatch.Gait;

/// <summary>Straight lines through the fall of a leaving foot and the rise of the one that comes down on the same spot.</summary>
internal sealed class SwapLines
{
    private readonly SteepestLine _fall, _rise;

    private SwapLines(SteepestLine fall, SteepestLine rise)
    {
        (_fall, _rise) = (fall, rise);
        (Lift, Contact) = (fall.Zero, rise.Zero);
        if (Contact > Lift)
            Lift = Contact = 0.5 * (Lift + Contact);
    }

    /// <summary>Where the fall reaches zero.</summary>
    public double Lift { get; }

    /// <summary>Where the rise leaves zero.</summary>
    public double Contact { get; }

    /// <summary>Lays the lines around the lowest load.</summary>
    public static SwapLines At(PlateSignal plate, int lowest) => new(SteepestLine.OfFall(plate, lowest), SteepestLine.OfRise(plate, lowest));

    /// <summary>Part of the load at a sample that the coming foot carries, 0 to 1.</summary>
    public double PartOfComing(double sample)
    {
        if (sample <= Contact)
            return 0;
        if (sample >= Lift)
            return 1;
        var falling = Math.Max(0, _fall.At(sample));
        var rising = Math.Max(0, _rise.At(sample));
        return falling + rising > 0 ? rising / (falling + rising) : 0.5;
    }
}
