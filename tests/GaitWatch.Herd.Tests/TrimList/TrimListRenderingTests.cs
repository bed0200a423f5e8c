using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TrimListRenderingTests
{
    private static readonly TrimList List = new()
    {
        Date = Some.Day0,
        Visit = new Visit(Some.Day0) { Half = VisitHalf.Pm, Trimmer = "K.", Places = 1 },
        Rows =
        [
            new TrimListRow
            {
                Position = 1, HasPlace = true, Cow = "417", Eid = Eid.Parse("999000000000417"), Pen = "2", Reason = TrimListReason.Alert, Leg = Leg.Rh, LoadDropPercent = 14.23,
                Since = new DateOnly(2026, 2, 27), Urgency = Urgency.Today, DaysInMilk = 51, LastSeenAt = Some.At(-1), BlockOn = new DateOnly(2026, 2, 1),
                LastFinding = "2026-02-01: sole ulcer, outer claw", Note = "Lift both hind feet.",
            },
            new TrimListRow { Position = 2, HasPlace = false, Cow = "87", Reason = TrimListReason.Routine, DryFrom = new DateOnly(2026, 2, 20), DueOn = new DateOnly(2026, 4, 20), Note = "=says \"x\", and\ny" },
        ],
        Removed = [new TrimListRemoval("5", TrimListReason.WrapOff, "done yesterday", "L.")],
    };

    [Fact]
    public void As_text() => Assert.Equal(
        """
        Trim list for 2026-03-03, afternoon, K., 2 cows, 1 place
          1  417      pen 2      right hind  alert today       carries 14 % less
             since 2026-02-27; 51 days in milk; block on since 2026-02-01
             last: 2026-02-01: sole ulcer, outer claw
             Lift both hind feet.

        No place left for 1 cow:
          2  87       pen -      -           routine
             dry since 2026-02-20; due 2026-04-20
             =says "x", and
        y

        Taken off by hand:
            5 (wrap-off): done yesterday (L.)


        """.ReplaceLineEndings("\n") + TrimListText.Caution + "\n",
        TrimListText.Render(List));

    [Fact]
    public void An_empty_list_says_so() =>
        Assert.StartsWith("Trim list for 2026-03-03, no visit planned, 0 cows\nNo cow asks for a place.\n", TrimListText.Render(new TrimList { Date = Some.Day0 }), StringComparison.Ordinal);

    // RFC 4180: CRLF, quotes around what holds a comma, a quote or a line break, quotes doubled. A leading = is escaped.
    [Fact]
    public void As_comma_separated_values() => Assert.Equal(
        "position,cow,eid,pen,reason,leg,loadDropPercent,since,urgency,daysInMilk,dueOn,lastSeenAt,lastFinding,blockOn,withdrawalUntil,note,hasPlace\r\n"
        + "1,417,999000000000417,2,alert,rh,14.2,2026-02-27,today,51,,2026-03-02T09:00:00.000Z,\"2026-02-01: sole ulcer, outer claw\",2026-02-01,,Lift both hind feet.,true\r\n"
        + "2,87,,,routine,,,,,,2026-04-20,,,,,\"'=says \"\"x\"\", and\ny\",false\r\n",
        TrimListCsv.Render(List));
}
