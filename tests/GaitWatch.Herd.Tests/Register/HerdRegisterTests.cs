using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class HerdRegisterTests
{
    private static readonly DateTimeOffset Start = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly Eid Tag = Eid.Parse("999000000000417");
    private static readonly Eid Other = Eid.Parse("999000000000087");

    [Fact]
    public void A_tag_nobody_claims_names_a_cow_after_its_digits() =>
        Assert.Equal("999000000000417", HerdRegister.Empty.CowOf(Tag, Start));

    [Fact]
    public void A_first_registration_holds_from_the_first_passage() =>
        Assert.Equal("417", new HerdRegister([Cow("417", Start, Tag)]).CowOf(Tag, Start.AddYears(-1)));

    [Fact]
    public void A_later_registration_holds_from_its_instant_and_history_is_kept()
    {
        var register = new HerdRegister([Cow("417", Start, Tag) with { Pen = "2" }, Cow("417", Start.AddDays(10), Tag) with { Pen = "5" }]);
        Assert.Equal("2", register.At("417", Start.AddDays(9))!.Pen);
        Assert.Equal("5", register.At("417", Start.AddDays(10))!.Pen);
        Assert.Equal(2, register.HistoryOf("417").Length);
    }

    [Fact]
    public void A_tag_that_moves_to_another_cow_names_each_in_her_time()
    {
        var register = new HerdRegister([Cow("417", Start, Tag), Cow("87", Start.AddDays(10), Tag)]);
        Assert.Equal("417", register.CowOf(Tag, Start.AddDays(9)));
        Assert.Equal("417", register.CowOf(Tag, Start.AddDays(-9)));
        Assert.Equal("87", register.CowOf(Tag, Start.AddDays(11)));
        var replaced = new HerdRegister([Cow("417", Start, Tag), Cow("417", Start.AddDays(10), Other)]);
        Assert.Equal("417", replaced.CowOf(Tag, Start.AddDays(9)));
        Assert.Equal("417", replaced.CowOf(Other, Start.AddDays(10)));
        Assert.Equal(Tag.ToString(), replaced.CowOf(Tag, Start.AddDays(11)));
    }

    [Fact]
    public void The_order_and_number_of_registrations_changes_nothing()
    {
        var registrations = Enumerable.Range(0, 12)
            .Select(i => Cow("cow" + i % 4, Start.AddDays(i % 5), i % 3 == 0 ? Tag : Other) with { Pen = (i % 6).ToString(), EnteredAt = Start.AddDays(i % 2) })
            .ToArray();
        var expected = Describe(new HerdRegister(registrations));
        Gen.Shuffle(registrations.Concat(registrations).ToArray()).Sample(shuffled => Describe(new HerdRegister(shuffled)) == expected);
    }

    [Fact]
    public void Calvings_departures_and_replaced_tags_are_told_once_each_at_the_farms_midnight()
    {
        var calendar = new FarmCalendar(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));
        var register = new HerdRegister(
        [
            Cow("417", Start, Tag) with { CalvedOn = new DateOnly(2026, 1, 11) },
            Cow("417", Start.AddDays(20), Tag) with { CalvedOn = new DateOnly(2026, 1, 11), Pen = "5" },
            Cow("417", Start.AddDays(40), Other) with { CalvedOn = new DateOnly(2026, 1, 11), LeftOn = new DateOnly(2026, 6, 1) },
        ]);
        Assert.Equal(
            [
                new Calved("417", new DateTimeOffset(2026, 1, 10, 23, 0, 0, TimeSpan.Zero)),
                new LeftHerd("417", new DateTimeOffset(2026, 5, 31, 22, 0, 0, TimeSpan.Zero)),
                (CowEvent)new TagReplaced("417", Start.AddDays(40)),
            ],
            register.Events(calendar).Select(input => input.Event));
    }

    [Fact]
    public void What_cannot_be_is_named_by_field()
    {
        var faults = HerdRegisterFaults.Of(new CowRegistration(" ", Start)
        {
            Parity = 21, CalvedOn = new DateOnly(2026, 1, 11), DriedOffOn = new DateOnly(2025, 11, 1), DueOn = new DateOnly(2026, 1, 11),
        });
        Assert.Equal(["cow", "parity", "driedOffOn", "dueOn"], faults.Select(fault => fault.Field));
        Assert.Contains("parity is 21: 0 to 20", faults[1].Fault, StringComparison.Ordinal);
    }

    private static CowRegistration Cow(string cow, DateTimeOffset from, Eid eid) => new(cow, from) { Eid = eid };

    private static string Describe(HerdRegister register) => string.Join(';', Enumerable.Range(-2, 10).SelectMany(day => new[]
    {
        register.CowOf(Tag, Start.AddDays(day)), register.CowOf(Other, Start.AddDays(day)), register.At("cow1", Start.AddDays(day))?.ToString(),
    }));
}
