namespace GaitWatch.Simulator.Tests;

/// <summary>Each bad crossing is what it claims to be, on plates short and long.</summary>
public class BadCrossingTests
{
    private static IEnumerable<SimulatedCrossing> Some(CrossingKind kind)
    {
        for (var seed = 0; seed < 30; seed++)
        {
            yield return WalkGenerator.Of(kind, seed, SimulatedPlatform.Of(1.8, 200));
            yield return WalkGenerator.Of(kind, seed);
            yield return WalkGenerator.Of(kind, seed, SimulatedPlatform.Of(6, 200));
        }
    }

    [Fact]
    public void Every_bad_kind_has_its_word_and_no_leg_truth()
    {
        foreach (var kind in CrossingKinds.Bad)
        {
            Assert.NotNull(kind.Reason());
            Assert.All(Some(kind).Take(6), crossing =>
            {
                Assert.Equal(kind, crossing.Kind);
                Assert.Null(crossing.Truth.Legs);
                Assert.True(crossing.Truth.FirstContactSeconds >= 0.5 && crossing.DurationSeconds - crossing.Truth.LastLiftSeconds >= 0.5);
                Assert.All(crossing.Samples, cell => Assert.All(cell, kg => Assert.True(float.IsFinite(kg))));
            });
        }
    }

    [Fact]
    public void Two_cows_are_on_the_plates_at_once() => Assert.All(Some(CrossingKind.TwoCows), crossing =>
        Assert.Contains(crossing.Truth.Footfalls, second => second.Animal == 1 && crossing.Truth.Footfalls.Any(first =>
            first.Animal == 0 && first.LiftSeconds > second.ContactSeconds)));

    [Fact]
    public void Who_stops_stands_over_three_seconds_with_her_weight_on_the_floor_and_plates()
    {
        Assert.All(Some(CrossingKind.Stops), crossing => Assert.True(crossing.Truth.Footfalls.Max(f => f.StanceSeconds) > 3));
    }

    [Fact]
    public void Who_turns_back_leaves_by_the_entry() => Assert.All(Some(CrossingKind.TurnsBack), crossing =>
    {
        var last = crossing.Truth.Footfalls.MaxBy(f => f.LiftSeconds)!;
        Assert.True(last.X < 1.5 && last.X <= crossing.Truth.Footfalls.Max(f => f.X));
        // Who backs out leaves fore feet last; who has turned round leaves hind feet last, each on the other plate.
        Assert.True(crossing.Truth.Footfalls[0].Foot.IsFore());
    });

    [Fact]
    public void Some_turn_round_and_some_back_out()
    {
        var last = Some(CrossingKind.TurnsBack).Select(crossing => crossing.Truth.Footfalls.MaxBy(f => f.LiftSeconds)!.Foot.IsFore()).ToArray();
        Assert.InRange(last.Average(fore => fore ? 1.0 : 0), 0.25, 0.75);
    }

    [Fact]
    public void While_she_stands_or_shuffles_round_the_plates_carry_no_more_than_she_weighs()
    {
        // Statics: standing cows press with their weight and no more; swaying moves it from side to side. On 6 m all her feet are on the plates.
        var platform = SimulatedPlatform.Of(6, 200) with { Sensors = PlatformSensors.Perfect };
        for (var seed = 0; seed < 40; seed++)
        {
            foreach (var kind in new[] { CrossingKind.Stops, CrossingKind.TurnsBack })
            {
                var crossing = WalkGenerator.Of(kind, seed, platform);
                for (var n = 0; n < crossing.SampleCount; n++)
                    Assert.InRange(crossing.Samples.Sum(cell => cell[n]) / crossing.Truth.WeightKg, -0.001, 1.3);
            }
        }
    }

    [Fact]
    public void Who_backs_sets_a_foot_down_behind_its_last_place() => Assert.All(Some(CrossingKind.BacksAStep), crossing =>
        Assert.True(SetsAFootBehind(crossing.Truth)));

    [Fact]
    public void Who_runs_is_over_two_metres_a_second_and_more_in_the_air_than_on_the_ground() => Assert.All(Some(CrossingKind.Runs), crossing =>
    {
        foreach (var leg in crossing.Truth.Footfalls.GroupBy(f => f.Foot))
        {
            foreach (var (a, b) in leg.Zip(leg.Skip(1)))
            {
                Assert.True((b.X - a.X) / (b.ContactSeconds - a.ContactSeconds) > 2);
                Assert.True(a.StanceSeconds < 0.5 * (b.ContactSeconds - a.ContactSeconds));
            }
        }
    });

    [Theory]
    [InlineData(CrossingKind.Calf, 45, 200)]
    [InlineData(CrossingKind.Dog, 15, 45)]
    [InlineData(CrossingKind.Person, 55, 115)]
    public void Calves_dogs_and_people_weigh_what_they_weigh(CrossingKind kind, double low, double high) =>
        Assert.All(Some(kind), crossing => Assert.InRange(crossing.Truth.WeightKg, low, high));

    [Fact]
    public void A_person_has_two_feet() => Assert.All(Some(CrossingKind.Person), crossing =>
        Assert.DoesNotContain(crossing.Truth.Footfalls, f => !f.Foot.IsFore()));

    [Fact]
    public void Lost_frames_are_lost_while_a_plate_is_loaded() => Assert.All(Some(CrossingKind.MissingFrames), crossing =>
    {
        var lost = Assert.Single(crossing.Lost);
        var (from, to) = (lost.Start / crossing.Hz, (lost.Start + lost.Count) / crossing.Hz);
        Assert.True(from > crossing.Truth.FirstContactSeconds && to < crossing.Truth.LastLiftSeconds);
        Assert.True(crossing.Frames(20).Sum(frame => frame.Count) <= crossing.SampleCount - lost.Count);
        Assert.DoesNotContain(crossing.Frames(20), frame => frame.Start < lost.Start + lost.Count && frame.Start + frame.Count > lost.Start);
    });

    [Fact]
    public void Half_crossed_leaves_a_leg_without_a_whole_footfall() => Assert.All(Some(CrossingKind.HalfCrossed), crossing =>
        Assert.True(crossing.Truth.Footfalls.Where(f => f.IsWhole).Select(f => f.Foot).Distinct().Count() < 4));

    [Fact]
    public void A_good_crossing_sends_every_sample_once_and_sets_no_foot_back()
    {
        foreach (var crossing in Some(CrossingKind.Steady))
        {
            Assert.Equal(crossing.SampleCount, crossing.Frames(50).Sum(frame => frame.Count));
            Assert.False(SetsAFootBehind(crossing.Truth));
        }
    }

    private static bool SetsAFootBehind(CrossingTruth truth) => truth.Footfalls.GroupBy(f => f.Foot)
        .Any(leg => leg.Zip(leg.Skip(1)).Any(pair => pair.Second.X < pair.First.X - 0.3));
}
