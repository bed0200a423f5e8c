using CsCheck;

namespace GaitWatch.Herd.Tests;

public sealed class VisitBookTests
{
    private static readonly DateOnly Day = Some.Day0;

    [Fact]
    public void The_next_visit_is_the_first_on_or_after_a_day()
    {
        var book = VisitBook.Of([Plan(0, 10), Plan(0, 3)]);
        Assert.Equal(Day.AddDays(3), book.NextFrom(Day.AddDays(3))!.Visit.Date);
        Assert.Equal(Day.AddDays(10), book.NextAfter(Day.AddDays(3))!.Visit.Date);
        Assert.Null(book.NextFrom(Day.AddDays(11)));
        Assert.Null(VisitBook.Empty.NextFrom(Day));
    }

    [Fact]
    public void A_later_plan_for_the_same_day_replaces_the_earlier()
    {
        var book = VisitBook.Of([Plan(1, 3, places: 20), Plan(0, 3, places: 12)]);
        Assert.Equal(20, Assert.Single(book.Visits).Visit.Places);
    }

    [Fact]
    public void A_moved_visit_stands_on_its_new_day_and_remembers_the_old_ones()
    {
        var book = VisitBook.Of([Plan(0, 3), Move(1, 3, 5), Move(2, 5, 9)]);
        var visit = Assert.Single(book.Visits);
        Assert.Equal(Day.AddDays(9), visit.Visit.Date);
        Assert.True(visit.IsOrWasOn(Day.AddDays(3)));
        Assert.True(visit.IsOrWasOn(Day.AddDays(5)));
        Assert.False(visit.IsOrWasOn(Day.AddDays(4)));
    }

    [Fact]
    public void Cancelling_and_moving_later_are_slips_and_moving_nearer_is_none()
    {
        var book = VisitBook.Of([Plan(0, 3), Plan(0, 20), Plan(0, 30), Move(1, 3, 5), Move(1, 20, 18), new VisitCancelWrite(Some.At(2), Day.AddDays(30))]);
        Assert.Equal(
            [new VisitSlip(Day.AddDays(3), Day.AddDays(5), Some.At(1)), new VisitSlip(Day.AddDays(30), null, Some.At(2))],
            book.Slips.ToArray());
    }

    [Fact]
    public void The_book_as_it_stood_leaves_out_what_was_entered_later()
    {
        FarmWrite[] writes = [Plan(0, 3), new VisitCancelWrite(Some.At(2), Day.AddDays(3))];
        Assert.NotNull(VisitBook.Of(writes, Some.At(1)).On(Day.AddDays(3)));
        Assert.Null(VisitBook.Of(writes).On(Day.AddDays(3)));
    }

    [Fact]
    public void Order_copies_and_lateness_change_nothing()
    {
        FarmWrite[] writes =
        [
            Plan(0, 3, 12), Plan(0, 3, 14), Plan(0, 9), Move(1, 3, 5), Move(1, 9, 7), new VisitCancelWrite(Some.At(1), Day.AddDays(5)),
            Plan(2, 5), Move(3, 5, 6), new VisitCancelWrite(Some.At(4), Day.AddDays(7)), Move(5, 40, 41),
        ];
        var expected = Describe(VisitBook.Of(writes));
        Gen.Shuffle(writes.Concat(writes).ToArray()).Sample(shuffled => Describe(VisitBook.Of(shuffled)) == expected);
    }

    [Theory]
    [InlineData("am", VisitHalf.Am)]
    [InlineData("pm", VisitHalf.Pm)]
    [InlineData(null, null)]
    public void A_plan_is_read_with_its_half(string? half, VisitHalf? expected)
    {
        var write = Assert.IsType<VisitWrite>(new VisitForm { Half = half, Trimmer = "K.", Places = 12 }.Read(Day, VisitBook.Empty, Some.At(0)).Write);
        Assert.Equal(new Visit(Day) { Half = expected, Trimmer = "K.", Places = 12 }, write.Visit);
        Assert.Equal(half, VisitForm.Of(write.Visit).Half);
    }

    [Fact]
    public void Another_day_than_the_routes_is_a_move()
    {
        var write = new VisitForm { Date = Day.AddDays(2) }.Read(Day, VisitBook.Of([Plan(0, 0)]), Some.At(0)).Write;
        Assert.Equal(new VisitMoveWrite(Some.At(0), Day, new Visit(Day.AddDays(2))), write);
    }

    [Fact]
    public void What_cannot_be_is_named_by_field_all_at_once()
    {
        var form = new VisitForm { Half = "noon", Places = 0, Trimmer = new string('x', 101), Date = Day.AddDays(1) };
        Assert.Equal(
            [
                "half is 'noon': am, pm, or null for the whole day.",
                "places is 0: how many cows there is time for, 1 to 500, or null when not known.",
                $"trimmer is '{new string('x', 40)}…': a name of at most 100 characters.",
                "date is 2026-03-04, but no visit is planned on 2026-03-03 that could be moved: none is planned at all.",
            ],
            form.Read(Day, VisitBook.Empty, Some.At(0)).Faults.Select(fault => fault.Fault));
    }

    [Fact]
    public void A_visit_moves_onto_no_other_and_only_a_planned_one_is_cancelled()
    {
        var book = VisitBook.Of([Plan(0, 0), Plan(0, 1)]);
        Assert.Equal(
            "date is 2026-03-04, where a visit is planned already: change that one, or cancel it first.",
            Assert.Single(VisitFaults.OfMove(Day, Day.AddDays(1), book)).Fault);
        Assert.Equal(
            "date is 2026-03-05, where no visit is planned: planned are 2026-03-03, 2026-03-04.",
            Assert.Single(VisitFaults.OfCancel(Day.AddDays(2), book)).Fault);
        Assert.Empty(VisitFaults.OfCancel(Day, book));
    }

    private static VisitWrite Plan(int entered, int day, int? places = null) => new(Some.At(entered), new Visit(Day.AddDays(day)) { Places = places });

    private static VisitMoveWrite Move(int entered, int from, int to) => new(Some.At(entered), Day.AddDays(from), new Visit(Day.AddDays(to)));

    private static string Describe(VisitBook book) =>
        string.Join(';', book.Visits.Select(visit => $"{visit.Visit} {string.Join(',', visit.EarlierDays)}")) + string.Join(';', book.Slips);
}
