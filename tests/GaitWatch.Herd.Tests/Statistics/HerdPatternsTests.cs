using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class HerdPatternsTests
{
    private static readonly HerdRegister Register = new(
    [
        new CowRegistration("1", Some.At(-400)) { Pen = "A" }, new CowRegistration("2", Some.At(-400)) { Pen = "A" },
        new CowRegistration("3", Some.At(-400)) { Pen = "B" }, new CowRegistration("4", Some.At(-400)),
        new CowRegistration("5", Some.At(-400)) { Pen = "B", LeftOn = Some.Day0.AddDays(-1) },
    ]);

    private static readonly Finding[] Findings =
    [
        // The same ulcer looked at three weeks later is no new case; after two months it is.
        Some.Finding("a", 1, Lesion.SoleUlcer, Leg.Rh) with { Cow = "1", Zone = 4, Severity = 2 },
        Some.Finding("b", 22, Lesion.SoleUlcer, Leg.Rh) with { Cow = "1", Zone = 4 },
        Some.Finding("c", 70, Lesion.SoleUlcer, Leg.Rh) with { Cow = "1", Zone = 5 },
        Some.Finding("d", 3, Lesion.WhiteLineFissure, Leg.Lh) with { Cow = "2", Zone = 3, Severity = 1 },
        Some.Finding("e", 3, Lesion.None, Leg.Rh) with { Cow = "2" },
        Some.Finding("f", 40, Lesion.DigitalDermatitis, Leg.Lh) with { Cow = "3", MStage = MStage.M2 },
        Some.Finding("g", 41, Lesion.SoleUlcer, Leg.Lf) with { Cow = "4" },
        Some.Finding("h", -10, Lesion.SoleUlcer, Leg.Lf) with { Cow = "2" },
    ];

    private static readonly DateOnly To = new(2026, 6, 1);

    [Fact]
    public void Cases_and_flags_are_counted_by_pen_leg_zone_lesion_and_month()
    {
        Alert[] alerts = [Some.Alert("1", Leg.Rh), Some.Alert("3", Leg.Lh, raised: 38), Some.Alert("3", Leg.Rf, raised: 39, urgency: Urgency.Watch), Some.Alert("1", Leg.Rh, raised: -60)];
        var patterns = HerdPatterns.Of(Findings, alerts, Register, Some.Day0, To, Some.Berlin);
        Assert.Equal([new("A", 3, 1), new("B", 1, 1), new("", 1, 0)], patterns.ByPen.AsEnumerable());
        Assert.Equal((2, 1, 1), (patterns.CowsInPen["A"], patterns.CowsInPen["B"], patterns.CowsInPen[""]));
        Assert.Equal([new(Leg.Lf, 1, 0), new(Leg.Rf, 0, 0), new(Leg.Lh, 2, 1), new(Leg.Rh, 2, 1)], patterns.ByLeg.AsEnumerable());
        Assert.Equal([new(3, 1, null), new(4, 1, null), new(5, 1, null), new(null, 2, null)], patterns.ByZone.AsEnumerable());
        Assert.Equal([new(Lesion.SoleUlcer, 3, null), new(Lesion.DigitalDermatitis, 1, null), new(Lesion.WhiteLineFissure, 1, null)], patterns.ByLesion.AsEnumerable());
        Assert.Equal(5, patterns.ByMonth.Sum(month => month.Cases));
        Assert.Equal(2, patterns.ByMonth.Sum(month => month.Alerts));
        Assert.Equal(FarmMonths.Between(Some.Day0, To), patterns.ByMonth.Select(month => month.Of));
        Assert.Empty(patterns.Clusters);
    }

    [Fact]
    public void Month_by_month_says_new_cases_days_to_the_chute_and_how_many_were_sound()
    {
        Alert[] alerts = [Some.Alert("1", Leg.Rh, raised: 0), Some.Alert("4", Leg.Lf, raised: 40)];
        var labels = AlertLabels.Of(alerts, Findings, Some.Berlin);
        JudgedTreatment Foot(string id, int day, bool? sound) => new(id, "1", Leg.Rh, Some.At(day), Lesion.SoleUlcer, Treatment.Trim, sound, null);
        var months = HerdMonth.Of(Findings, alerts, labels, [Foot("a", 1, true), Foot("b", 2, false), Foot("c", 2, null)], Register, Some.Day0, To, Some.At(90), Some.Berlin);
        Assert.Equal(FarmMonths.Between(Some.Day0, To), months.Select(month => month.Month));
        var first = months[0];
        // The sole ulcer of cow 1; a mild white line fissure makes no cow lame.
        Assert.Equal((1, 1), (first.NewCases, first.Flags));
        Assert.Equal((1, 2), (first.Recovered.Count, first.Recovered.Of));
        Assert.Equal((1, 1), (first.OnsetToChute.Count, first.OnsetToChute.Events));
        var alert = alerts[0];
        Assert.Equal((Findings[0].At - alert.OnsetAt).TotalDays, first.OnsetToChute.MedianDays!.Value, 1e-9);
        Assert.Equal(4, months.Sum(month => month.NewCases));
    }
}
