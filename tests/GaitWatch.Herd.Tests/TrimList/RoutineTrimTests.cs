namespace GaitWatch.Herd.Tests;

/// <summary>Dry-off, 60-100 days in milk, heifers 4-8 weeks before calving, none in the last 4 weeks before: common practice, no source.</summary>
public sealed class RoutineTrimTests
{
    private static readonly DateOnly Day = Some.Day0;
    private static readonly CowRegistration Cow = new("417", Some.At(-400)) { Parity = 2, CalvedOn = Day.AddDays(-200) };

    [Theory]
    [InlineData(59, null)]
    [InlineData(60, "60 days in milk")]
    [InlineData(100, "100 days in milk")]
    [InlineData(101, null)]
    public void In_milk(int days, string? because) => Assert.Equal(because, Due(Cow with { CalvedOn = Day.AddDays(-days) }));

    [Theory]
    [InlineData(0, "dried off")]
    [InlineData(21, "dried off")]
    [InlineData(22, null)]
    public void At_dry_off(int days, string? because) => Assert.Equal(because, Due(Cow with { DriedOffOn = Day.AddDays(-days) }));

    [Theory]
    [InlineData(57, null)]
    [InlineData(56, "heifer before calving")]
    [InlineData(28, "heifer before calving")]
    [InlineData(27, null)]
    public void Heifers(int daysToCalving, string? because) =>
        Assert.Equal(because, Due(new CowRegistration("h", Some.At(-400)) { Parity = 0, DueOn = Day.AddDays(daysToCalving) }));

    [Theory]
    [InlineData(27, null)]
    [InlineData(28, "dried off")]
    public void None_in_the_last_weeks_before_calving(int daysToCalving, string? because) =>
        Assert.Equal(because, Due(Cow with { DriedOffOn = Day.AddDays(-3), DueOn = Day.AddDays(daysToCalving) }));

    [Fact]
    public void Not_when_trimmed_of_late_left_or_switched_off()
    {
        var due = Cow with { CalvedOn = Day.AddDays(-80) };
        Assert.Null(RoutineTrim.DueBecause(due, Day, Day.AddDays(-41), new RoutineTrimOptions()));
        Assert.NotNull(RoutineTrim.DueBecause(due, Day, Day.AddDays(-42), new RoutineTrimOptions()));
        Assert.Null(Due(due with { LeftOn = Day }));
        Assert.Null(RoutineTrim.DueBecause(due, Day, null, new RoutineTrimOptions { IsOn = false }));
    }

    [Fact]
    public void Days_in_milk_need_a_calving_before_and_no_dry_off()
    {
        Assert.Equal(200, RoutineTrim.DaysInMilk(Cow, Day));
        Assert.Null(RoutineTrim.DaysInMilk(Cow with { CalvedOn = Day.AddDays(1) }, Day));
        Assert.Null(RoutineTrim.DaysInMilk(Cow with { DriedOffOn = Day }, Day));
        Assert.Null(RoutineTrim.DaysInMilk(null, Day));
    }

    private static string? Due(CowRegistration cow) => RoutineTrim.DueBecause(cow, Day, null, new RoutineTrimOptions());
}
