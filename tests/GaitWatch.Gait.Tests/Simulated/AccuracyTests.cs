using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// How near the figures come to the truth of simulated crossings. The bounds are what was measured over other seeds with a margin of
/// about a third; they hold the analysis where it is, they are no claim about real cows.
/// </summary>
public class AccuracyTests
{
    private const int Crossings = 150;

    [Fact]
    public void Steady_walks() => Measure(CrossingKind.Steady, null, Inside).Expect(accepted: 0.99, share: 0.06, worst: 0.5, weight: 0.25, peak: 0.5, stance: 12, stride: 3);

    [Fact]
    public void Changing_and_slow_walks() => Measure(CrossingKind.Varied, null, Inside).Expect(accepted: 0.99, share: 0.16, worst: 1.0, weight: 0.35, peak: 0.6, stance: 20, stride: 6);

    [Fact]
    public void Feet_partly_over_an_edge() => Measure(CrossingKind.Steady, null, OverEdge).Expect(accepted: 0.97, share: 0.20, worst: 2.0, weight: 0.6, peak: 1.1, stance: 15, stride: 6);

    [Fact]
    public void Changing_and_slow_walks_with_feet_partly_over_an_edge() =>
        Measure(CrossingKind.Varied, null, OverEdge).Expect(accepted: 0.96, share: 0.30, worst: 2.5, weight: 0.8, peak: 1.2, stance: 22, stride: 9);

    private static bool Inside(SimulatedCrossing crossing) => crossing.Truth.Footfalls.All(footfall => footfall.IsWhole);

    private static bool OverEdge(SimulatedCrossing crossing) => !Inside(crossing);

    private static Errors Measure(CrossingKind kind, SimulatedPlatform? platform, Func<SimulatedCrossing, bool> take)
    {
        var analyser = new CrossingAnalyser(Tape.Platform(platform ?? SimulatedPlatform.Default), new GaitOptions());
        var errors = new Errors();
        for (long seed = 700_001; errors.Crossings < Crossings; seed++)
        {
            var crossing = WalkGenerator.Of(kind, seed, platform);
            if (!take(crossing) || crossing.Truth.Legs is not { } truth || new[] { truth.Lf, truth.Rf, truth.Lh, truth.Rh }.Any(leg => leg.Share is null))
                continue;
            errors.Add(crossing, truth, analyser.Analyse(Tape.Frames(crossing)));
        }

        return errors;
    }

    private sealed class Errors
    {
        private readonly List<double> _share = [], _weight = [], _peak = [], _stance = [], _stride = [];
        private int _accepted;

        public int Crossings { get; private set; }

        public void Add(SimulatedCrossing crossing, PerFoot<LegTruth> truth, WindowAnalysis analysis)
        {
            Crossings++;
            if (analysis.Crossings is not [{ Reasons.IsEmpty: true } found])
                return;
            _accepted++;
            _weight.Add(100 * ((found.WeightKg!.Value / crossing.Truth.WeightKg) - 1));
            _stride.Add(1000 * (found.StrideSeconds!.Value - crossing.Truth.StrideSeconds!.Value));
            foreach (var leg in Legs.All)
            {
                var (was, got) = (truth[(Foot)(int)leg], found.Legs[leg]);
                _share.Add(100 * (got.Share!.Value - was.Share!.Value));
                _peak.Add(100 * ((got.PeakKg!.Value / was.PeakKg!.Value) - 1));
                _stance.Add(1000 * (got.StanceSeconds!.Value - was.StanceSeconds!.Value));
            }
        }

        /// <summary>Bounds: part accepted; share in points; weight and peak in per cent; stance and stride in milliseconds; all RMS but the worst share.</summary>
        public void Expect(double accepted, double share, double worst, double weight, double peak, double stance, double stride)
        {
            Assert.InRange((double)_accepted / Crossings, accepted, 1);
            Assert.InRange(Rms(_share), 0, share);
            Assert.InRange(_share.Max(Math.Abs), 0, worst);
            Assert.InRange(Rms(_weight), 0, weight);
            Assert.InRange(Rms(_peak), 0, peak);
            Assert.InRange(Rms(_stance), 0, stance);
            Assert.InRange(Rms(_stride), 0, stride);
        }

        private static double Rms(List<double> errors) => Math.Sqrt(errors.Average(error => error * error));
    }
}
