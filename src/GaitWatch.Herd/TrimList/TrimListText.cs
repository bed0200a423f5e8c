using System.Globalization;
using System.Text;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A visit's list as plain text, for a terminal and for paper.</summary>
public static class TrimListText
{
    /// <summary>What stands under every list. Common practice, no source; local rules and the farm's veterinarian decide.</summary>
    public const string Caution =
        "Call the veterinarian the same day: no weight on the leg; swelling above the claw,\n"
        + "or between the claws with fever or a foul smell; pus, a deep smell, or bone, tendon\n"
        + "or joint suspected; both claws of a foot sore; bleeding that does not stop; a clearly\n"
        + "lame cow with nothing in the foot; not better at the block check; down, feverish or\n"
        + "off feed. Several cows lame with blisters, drooling or fever: move no animal and call\n"
        + "at once. Knives, grinders and a cow in a chute can hurt: secure her and the foot\n"
        + "first. The list points at cows; it is no diagnosis.";

    /// <summary>The list, one cow a line and what else is known of her under it; lines end with a line feed.</summary>
    public static string Render(TrimList list)
    {
        var text = new StringBuilder();
        text.Append(Heading(list)).Append('\n');
        if (list.Rows.IsEmpty)
            text.Append("No cow asks for a place.\n");
        foreach (var row in list.Rows)
        {
            if (!row.HasPlace && (row.Position == 1 || list.Rows[row.Position - 2].HasPlace))
                text.Append('\n').Append(CultureInfo.InvariantCulture, $"No place left for {Cows(list.WithoutPlace)}:").Append('\n');
            Append(text, row);
        }

        if (!list.Removed.IsEmpty)
        {
            text.Append("\nTaken off by hand:\n");
            foreach (var removal in list.Removed)
            {
                var reason = removal.Reason is { } would ? $" ({would.WireName()})" : "";
                text.Append(CultureInfo.InvariantCulture, $"    {removal.Cow}{reason}: {removal.Why}{(removal.By.Length > 0 ? $" ({removal.By})" : "")}").Append('\n');
            }
        }

        return text.Append('\n').Append(Caution).Append('\n').ToString();
    }

    private static string Heading(TrimList list)
    {
        var parts = new List<string> { string.Create(CultureInfo.InvariantCulture, $"Trim list for {list.Date:yyyy-MM-dd}") };
        if (list.Visit is null)
            parts.Add("no visit planned");
        if (list.Visit?.Half is { } half)
            parts.Add(half == VisitHalf.Am ? "morning" : "afternoon");
        if (list.Visit?.Trimmer is { Length: > 0 } trimmer)
            parts.Add(trimmer);
        parts.Add(Cows(list.Rows.Length));
        if (list.Visit?.Places is { } places)
            parts.Add(places == 1 ? "1 place" : string.Create(CultureInfo.InvariantCulture, $"{places} places"));
        return string.Join(", ", parts);
    }

    private static void Append(StringBuilder text, TrimListRow row)
    {
        var what = row.Urgency is { } urgency && row.Reason == TrimListReason.Alert ? $"{row.Reason.WireName()} {urgency.WireName()}" : row.Reason.WireName();
        var drop = row.LoadDropPercent is { } percent ? string.Create(CultureInfo.InvariantCulture, $"carries {percent:0} % less") : "";
        text.Append(string.Create(
            CultureInfo.InvariantCulture,
            $"{row.Position,3}  {row.Cow,-8} pen {row.Pen ?? "-",-6} {row.Leg?.InWords() ?? "-",-11} {what,-17} {drop}").TrimEnd()).Append('\n');
        foreach (var line in Facts(row))
            text.Append("     ").Append(line).Append('\n');
    }

    private static IEnumerable<string> Facts(TrimListRow row)
    {
        var facts = new List<string>();
        if (row.Since is { } since)
            facts.Add(Fact("since", since));
        if (row.DryFrom is { } dry)
            facts.Add(Fact("dry since", dry));
        else if (row.DaysInMilk is { } days)
            facts.Add(string.Create(CultureInfo.InvariantCulture, $"{days} days in milk"));
        if (row.DueOn is { } due)
            facts.Add(Fact("due", due));
        if (row.BlockOn is { } block)
            facts.Add(Fact("block on since", block));
        if (row.WithdrawalUntil is { } until)
            facts.Add(Fact("withdrawal until", until));
        if (facts.Count > 0)
            yield return string.Join("; ", facts);
        if (row.LastFinding is { } last)
            yield return $"last: {last}";
        if (row.Note is { } note)
            yield return note;
    }

    private static string Fact(string what, DateOnly day) => string.Create(CultureInfo.InvariantCulture, $"{what} {day:yyyy-MM-dd}");

    private static string Cows(int count) => count == 1 ? "1 cow" : string.Create(CultureInfo.InvariantCulture, $"{count} cows");
}
