namespace GaitWatch.Gait;

/// <summary>How sure the impulses of the feet are, and how their errors hang together.</summary>
/// <remarks>
/// Five things are modelled. Where two feet stand on a plate, an error of their places moves load from one to the other. Where
/// one follows the other on the spot, so does the line that parts them. A cell that reads too much favours the feet
/// near it. And a foot beyond an edge may press on the plate unseen (<see cref="UnseenFeet"/>). Last, a
/// zero that changed meanwhile did so nobody sees when (<see cref="ZeroErrors"/>).
/// </remarks>
internal static class ImpulseErrors
{
    /// <summary>Mismatch of a cell's gain, one standard error (cells of one class agree within 0.5 %).</summary>
    private const double GainError = 0.0021;

    /// <summary>Noise, ringing, the ends of a stance: error of an impulse of its own, as a part of it.</summary>
    private const double OwnError = 0.0008;

    /// <summary>Error of the parting of two feet on one spot, as a part of the impulse that falls between contact and lift.</summary>
    private const double SwapError = 0.2;

    /// <summary>Covariance of the impulses of all feet in order of contact, kg2 s2.</summary>
    public static double[,] Of(CrossingFeet feet)
    {
        var count = feet.InOrder.Count;
        var covariance = new double[count, count];
        var index = new Dictionary<FootOnPlate, int>(count);
        var stride = UnseenFeet.StrideMetres(feet);
        for (var k = 0; k < count; k++)
        {
            var foot = feet.InOrder[k];
            index[foot] = k;
            var unseen = stride is { } metres ? UnseenFeet.Variance(foot, metres, feet.Plates.Left.LengthMetres) : 0;
            covariance[k, k] += (Square(OwnError) + unseen) * Square(foot.ImpulseKgSeconds);
        }

        ZeroErrors.Add(feet, index, covariance);
        AddGains(feet.InOrder, feet.Plates.Left.LengthMetres, covariance);
        var moved = new double[]?[count];
        foreach (var plate in (ReadOnlySpan<PlateSide>)[PlateSide.Left, PlateSide.Right])
        {
            var list = plate == PlateSide.Left ? feet.Left : feet.Right;
            for (var k = 0; k + 1 < list.Count; k++)
            {
                var (leaving, coming) = (index[list[k]], index[list[k + 1]]);
                if (list[k].LiftEvent == FootEvent.Swap)
                    AddSwap(feet.Plates[plate], list[k], list[k + 1], leaving, coming, covariance);
                else if (list[k].LiftEvent == FootEvent.Transfer && feet.Travel is { } travel)
                    Move(travel, feet.Plates[plate].Step, list[k], list[k + 1], ref moved[leaving], ref moved[coming]);
            }
        }

        if (feet.Travel is { } places)
            AddPlaces(places, moved, covariance);
        return covariance;
    }

    private static void AddGains(IReadOnlyList<FootOnPlate> feet, double length, double[,] covariance)
    {
        for (var a = 0; a < feet.Count; a++)
        {
            for (var b = 0; b < feet.Count; b++)
            {
                if (feet[a].Side != feet[b].Side)
                    continue;
                var (x, y) = (Math.Clamp(feet[a].PlaceX / length, 0, 1), Math.Clamp(feet[b].PlaceX / length, 0, 1));
                covariance[a, b] += GainError * GainError * feet[a].ImpulseKgSeconds * feet[b].ImpulseKgSeconds * (((1 - x) * (1 - y)) + (x * y));
            }
        }
    }

    private static void AddSwap(PlateSignal plate, FootOnPlate leaving, FootOnPlate coming, int a, int b, double[,] covariance)
    {
        var between = 0.0;
        for (var i = (int)Math.Ceiling(coming.Contact); i <= leaving.Lift && i < plate.Count; i++)
            between += plate.ForceKg[Math.Max(i, 0)] * plate.Step;
        var variance = Square(SwapError * between);
        covariance[a, a] += variance;
        covariance[b, b] += variance;
        covariance[a, b] -= variance;
        covariance[b, a] -= variance;
    }

    /// <summary>
    /// F2 = (M - F x1) / (x2 - x1) gives dF2 = -(F1 dx1 + F2 dx2) / (x2 - x1): so much moves from one to the other for an error of the
    /// parameters of the places.
    /// </summary>
    private static void Move(PressureTravel travel, double step, FootOnPlate leaving, FootOnPlate coming, ref double[]? fromLeaving, ref double[]? toComing)
    {
        fromLeaving ??= new double[travel.Size];
        toComing ??= new double[travel.Size];
        var from = (int)Math.Ceiling(Math.Max(coming.Contact, Math.Max(leaving.ForceStart, coming.ForceStart)));
        var to = (int)Math.Min(leaving.Lift, Math.Min(leaving.ForceStart + leaving.Force.Length, coming.ForceStart + coming.Force.Length) - 1);
        for (var i = from; i <= to; i++)
        {
            var apart = coming.XAt(i) - leaving.XAt(i);
            if (Math.Abs(apart) < 0.25)
                continue;
            var first = -leaving.Force[i - leaving.ForceStart] / apart * step;
            var second = -coming.Force[i - coming.ForceStart] / apart * step;
            travel.AddRow(toComing, coming, coming.PhaseAt(i), second);
            travel.AddRow(toComing, leaving, leaving.PhaseAt(i), first);
            travel.AddRow(fromLeaving, coming, coming.PhaseAt(i), -second);
            travel.AddRow(fromLeaving, leaving, leaving.PhaseAt(i), -first);
        }
    }

    private static void AddPlaces(PressureTravel travel, double[]?[] moved, double[,] covariance)
    {
        foreach (var gradient in moved)
        {
            if (gradient is not null)
                travel.Whiten(gradient);
        }

        for (var a = 0; a < moved.Length; a++)
        {
            for (var b = 0; b < moved.Length; b++)
            {
                if (moved[a] is not { } first || moved[b] is not { } second)
                    continue;
                for (var k = 0; k < first.Length; k++)
                    covariance[a, b] += first[k] * second[k];
            }
        }
    }

    private static double Square(double value) => value * value;
}
