namespace GaitWatch.Gait;

/// <summary>All feet of a crossing, worked out.</summary>
internal sealed class CrossingFeet
{
    /// <summary>A crossing with more feet on a plate than this is no walk of one cow, and not worked out further.</summary>
    private const int MostFeetOnPlate = 24;

    /// <summary>
    /// Half of a cow's claw length, metres (about 13 cm: common practice, no source): a foot whose middle is nearer to an edge presses
    /// beyond it.
    /// </summary>
    private const double HalfFootMetres = 0.07;

    /// <summary>
    /// A foot that is alone only at the beginning or the end of its stance shows its heel or its toe, so far from its middle, metres; the fit of the
    /// places tells its middle.
    /// </summary>
    private const double HeelMetres = 0.025;

    /// <summary>Noise and ringing of a plate stay below this, kg.</summary>
    private const double LeastOnKg = 4;

    /// <summary>A plate counts as loaded above this part of its highest load.</summary>
    private const double OnPart = 0.015;

    /// <summary>Places depend on times and times on places; they settle in this many rounds.</summary>
    private const int Rounds = 3;

    private CrossingFeet(PlatePair plates, List<FootOnPlate> left, List<FootOnPlate> right, PressureTravel? travel, bool isOrdered)
    {
        Plates = plates;
        Left = left;
        Right = right;
        Travel = travel;
        IsOrdered = isOrdered;
        InOrder = [.. left.Concat(right).OrderBy(foot => foot.Contact)];
    }

    /// <summary>The signals.</summary>
    public PlatePair Plates { get; }

    /// <summary>Feet on the left plate in order of landing.</summary>
    public List<FootOnPlate> Left { get; }

    /// <summary>Feet on the right plate in order of landing.</summary>
    public List<FootOnPlate> Right { get; }

    /// <summary>All of them in order of contact.</summary>
    public IReadOnlyList<FootOnPlate> InOrder { get; }

    /// <summary>The fit of the places; null when there was nothing to fit.</summary>
    public PressureTravel? Travel { get; }

    /// <summary>Whether fore and hind alternate on both sides as they do in a walk.</summary>
    public bool IsOrdered { get; }

    /// <summary>Seconds between samples.</summary>
    public double Step => Plates.Left.Step;

    /// <summary>Finds the feet and splits the load between them.</summary>
    public static CrossingFeet Find(PlatePair plates)
    {
        var left = Find(plates.Left, PlateSide.Left);
        var right = Find(plates.Right, PlateSide.Right);
        var isOrdered = FootOrder.Name(left, plates.Left) & FootOrder.Name(right, plates.Right);
        if (left.Count > MostFeetOnPlate || right.Count > MostFeetOnPlate || left.Count + right.Count == 0)
            return new CrossingFeet(plates, left, right, null, false);
        return new CrossingFeet(plates, left, right, Split(plates, left, right), isOrdered);
    }

    private static List<FootOnPlate> Find(PlateSignal plate, PlateSide side)
    {
        var highest = 0.0;
        foreach (var kg in plate.ForceKg)
            highest = Math.Max(highest, kg);
        var feet = FootFinder.Find(plate, side, Math.Max(LeastOnKg, OnPart * highest));
        foreach (var foot in feet)
            foot.IsOnEdge |= IsOnEdge(foot.PlaceX, plate, HalfFootMetres - HeelMetres);
        return feet;
    }

    private static bool IsOnEdge(double x, PlateSignal plate, double nearerThan = HalfFootMetres) =>
        x < nearerThan || x > plate.LengthMetres - nearerThan;

    private static PressureTravel Split(PlatePair plates, List<FootOnPlate> left, List<FootOnPlate> right)
    {
        var splits = (Left: new FootSplit(plates.Left, left), Right: new FootSplit(plates.Right, right));
        PressureTravel travel;
        var round = 0;
        do
        {
            splits.Left.Time();
            splits.Right.Time();
            travel = PressureTravel.Fit((plates.Left, left), (plates.Right, right));
            foreach (var foot in left)
                foot.IsOnEdge |= IsOnEdge(foot.Line.Middle, plates.Left);
            foreach (var foot in right)
                foot.IsOnEdge |= IsOnEdge(foot.Line.Middle, plates.Right);
        }
        while (++round < Rounds);

        splits.Left.Time();
        splits.Right.Time();
        foreach (var foot in left.Concat(right))
        {
            if (foot.Lift > foot.Contact)
                continue;
            foot.Lift = foot.Contact + 1;
            foot.IsResolved = false;
        }

        splits.Left.Share();
        splits.Right.Share();
        return travel;
    }
}
