using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Makes a visit's list: who asks for a place, who gets one, in which order, and what the trimmer should know of each.</summary>
public static class TrimListComposer
{
    /// <summary>The list. Nobody is dropped in silence: cows without a place and cows taken off by hand are on it as such.</summary>
    public static TrimList Compose(TrimListInputs inputs)
    {
        var held = inputs.Writes.Where(write => write.At <= inputs.AsOf).ToImmutableArray();
        var visits = VisitBook.Of(held);
        var planned = visits.On(inputs.Visit);
        var log = inputs.Findings ?? FindingLog.Of(held);
        var findings = log.Findings.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        var plan = FollowUpPlan.Of(held, inputs.Alerts, inputs.Calendar, inputs.FollowUps, inputs.Recoveries, inputs.AsOf, inputs.Visit, log);
        var hands = Hands(held, inputs.Visit, planned);
        var removals = FarmRemovals.Of(held, log.Findings).ToLookup(removal => removal.Finding.Cow, StringComparer.Ordinal);
        var byCow = TrimListCandidates.Of(inputs, visits, findings, plan)
            .Where(candidate => !FollowUpPlan.HasLeft(candidate.Entry.Cow, inputs.Visit, inputs.Register))
            .ToLookup(candidate => candidate.Entry.Cow, StringComparer.Ordinal);

        var entries = new List<TrimListEntry>();
        var removed = new List<TrimListRemoval>();
        foreach (var cow in byCow.Select(group => group.Key).Union(hands.Keys).Order(NaturalOrder.Comparer))
        {
            var hand = hands.GetValueOrDefault(cow);
            var lead = Lead(byCow[cow], findings[cow], inputs) is { } most ? WithTreatment(most, findings[cow], inputs) : null;
            if (hand?.Hand == TrimListHand.Pinned)
                entries.Add(Pinned(lead, hand, findings[cow], inputs));
            else if (hand?.Hand == TrimListHand.Removed && !byCow[cow].Any(candidate => candidate.KnownAt > hand.At && candidate.Entry.Reason == TrimListReason.Alert))
                removed.Add(new TrimListRemoval(cow, lead?.Reason, hand.Reason, hand.By));
            else if (lead is not null)
                entries.Add(hand?.Hand == TrimListHand.Removed ? lead with { Also = [.. lead.Also, "Was taken off the list before this alert."] } : lead);
        }

        return new TrimList
        {
            Date = inputs.Visit,
            Visit = planned?.Visit,
            Rows = Placed(entries, planned, findings, removals, held, inputs),
            Removed = [.. removed],
        };
    }

    private static Dictionary<string, TrimListHandWrite> Hands(ImmutableArray<FarmWrite> held, DateOnly visit, PlannedVisit? planned) => held
        .OfType<TrimListHandWrite>()
        .Where(hand => hand.Visit == visit || planned?.IsOrWasOn(hand.Visit) == true)
        .GroupBy(hand => hand.Cow, StringComparer.Ordinal)
        .ToDictionary(group => group.Key, group => group.Order(TrimListHandWrite.Order).Last(), StringComparer.Ordinal);

    // The most pressing reason leads; the others are said in its note.
    private static TrimListEntry? Lead(IEnumerable<TrimListCandidate> candidates, IEnumerable<Finding> findings, TrimListInputs inputs)
    {
        var all = candidates.ToArray();
        if (all.Length == 0)
            return null;
        var lead = all.OrderBy(candidate => candidate.Entry.Urgency is Urgency.Today ? 0 : 1)
            .ThenBy(candidate => candidate.Entry.Reason is TrimListReason.Alert or TrimListReason.NotRecovering ? TrimListReason.NotRecovering : candidate.Entry.Reason)
            .ThenByDescending(candidate => candidate.Entry.LoadDropPercent ?? 0)
            .ThenBy(candidate => candidate.Entry.Reason).ThenBy(candidate => candidate.Entry.Leg).ThenBy(candidate => candidate.Sentence, StringComparer.Ordinal)
            .First();
        // A follow-up says in words what its reason only names; an alert and a recovery are told by their figures.
        var isFollowUp = lead.Entry.Reason is TrimListReason.Recheck or TrimListReason.BlockCheck or TrimListReason.BlockOff or TrimListReason.WrapOff;
        var also = all.Where(candidate => candidate != lead || isFollowUp || lead.Entry.Reason == TrimListReason.Routine)
            .Where(candidate => !SameTrouble(candidate, lead))
            .OrderBy(candidate => candidate.Entry.Reason).ThenBy(candidate => candidate.Entry.Leg)
            .Select(candidate => candidate.Sentence).Distinct();
        return lead.Entry with { Also = [.. also], HasActiveDermatitis = HasActiveDermatitis(findings, inputs.AsOf) };
    }

    private static TrimListEntry WithTreatment(TrimListEntry entry, IEnumerable<Finding> findings, TrimListInputs inputs)
    {
        if (entry.Reason != TrimListReason.Alert || inputs.Alerts.FirstOrDefault(alert => alert.Cow == entry.Cow && alert.Leg == entry.Leg && alert.Pattern == entry.Pattern && alert.ClosedAt is null) is not { } flag)
            return entry;
        return AfterTreatment.Of(flag, TreatedFeet.Of(findings, []), new RecoveryOptions()) is { } after ? entry with { Also = [after.InWords(inputs.Calendar), .. entry.Also] } : entry;
    }

    // The alert and the recovery of one foot are one trouble.
    private static bool SameTrouble(TrimListCandidate candidate, TrimListCandidate lead) =>
        candidate != lead && candidate.Entry.Leg == lead.Entry.Leg
        && candidate.Entry.Reason is TrimListReason.Alert && lead.Entry.Reason is TrimListReason.NotRecovering;

    private static TrimListEntry Pinned(TrimListEntry? lead, TrimListHandWrite hand, IEnumerable<Finding> findings, TrimListInputs inputs)
    {
        var entry = lead ?? new TrimListEntry
        {
            Cow = hand.Cow,
            Pen = inputs.Register.At(hand.Cow, inputs.AsOf)?.Pen,
            Reason = hand.Foot is null ? TrimListReason.Routine : TrimListReason.Recheck,
            Leg = hand.Foot,
            HasActiveDermatitis = HasActiveDermatitis(findings, inputs.AsOf),
        };
        var where = hand.Foot is { } foot && entry.Leg != foot ? $"{foot.InWords()}: " : "";
        return entry with { IsPinned = true, Also = [$"Asked for by hand: {where}{hand.Reason}.", .. entry.Also] };
    }

    private static ImmutableArray<TrimListRow> Placed(
        List<TrimListEntry> entries, PlannedVisit? planned, ILookup<string, Finding> findings, ILookup<string, FarmRemoval> removals,
        ImmutableArray<FarmWrite> held, TrimListInputs inputs)
    {
        var withPlace = TrimListOrder.ByPressure(entries).Take(planned?.Visit.Places ?? int.MaxValue).Select(entry => entry.Cow).ToHashSet(StringComparer.Ordinal);
        bool IsOfVisit(DateOnly day) => day == inputs.Visit || planned?.IsOrWasOn(day) == true;
        var done = held.OfType<TrimListDoneWrite>().Where(write => IsOfVisit(write.Visit))
            .GroupBy(write => write.Cow, StringComparer.Ordinal)
            .ToDictionary(ofCow => ofCow.Key, ofCow => ofCow.Order(TrimListDoneWrite.Order).Last(), StringComparer.Ordinal);
        var ordered = TrimListMoves.Apply(
                TrimListOrder.Of(entries.Where(entry => withPlace.Contains(entry.Cow))), held.OfType<TrimListMoveWrite>().Where(write => IsOfVisit(write.Visit)))
            .Concat(TrimListOrder.Of(entries.Where(entry => !withPlace.Contains(entry.Cow))));
        return [.. ordered.Select((entry, index) => Row(entry, index + 1, withPlace.Contains(entry.Cow), findings[entry.Cow], removals[entry.Cow], inputs) with
        {
            DoneAt = done.GetValueOrDefault(entry.Cow) is { IsDone: true } tick ? tick.At : null,
        })];
    }

    private static TrimListRow Row(
        TrimListEntry entry, int position, bool hasPlace, IEnumerable<Finding> findings, IEnumerable<FarmRemoval> removals, TrimListInputs inputs)
    {
        var known = inputs.Register.At(entry.Cow, inputs.AsOf);
        var ofCow = findings.Where(finding => finding.At <= inputs.AsOf).ToArray();
        var ofFoot = FootState.Of(ofCow.Where(finding => entry.Leg is null || finding.Foot == entry.Leg));
        DateTimeOffset? blockSince = Legs.All.Where(foot => entry.Leg is null || foot == entry.Leg)
            .Select(foot => FootState.Of(ofCow.Where(finding => finding.Foot == foot), removals.Where(removal => removal.Finding.Foot == foot)).BlockSince)
            .Min();
        DateTimeOffset? lastSeen = inputs.LastSeen.TryGetValue(entry.Cow, out var seen) ? seen : null;
        return new TrimListRow
        {
            Position = position,
            HasPlace = hasPlace,
            Cow = entry.Cow,
            Eid = known is not null ? known.Eid : Eid.TryParse(entry.Cow, out var named, out _) ? named : null,
            Pen = entry.Pen,
            Reason = entry.Reason,
            Leg = entry.Leg,
            LoadDropPercent = entry.LoadDropPercent,
            Since = entry.Since,
            Urgency = entry.Urgency,
            DaysInMilk = RoutineTrim.DaysInMilk(known, inputs.Visit),
            DryFrom = known?.DriedOffOn,
            DueOn = known?.DueOn,
            LastSeenAt = lastSeen,
            LastFinding = ofFoot.Last is { } last ? LastFinding(last, entry.Leg is null, inputs.Calendar) : null,
            BlockOn = blockSince is { } since ? inputs.Calendar.DayOf(since) : null,
            WithdrawalUntil = ofCow.Select(finding => finding.WithdrawalUntil).Where(until => until >= inputs.Calendar.DayOf(inputs.AsOf)).Max(),
            IsPinned = entry.IsPinned,
            HasActiveDermatitis = entry.HasActiveDermatitis,
            Note = Note(entry, known, lastSeen, inputs),
        };
    }

    private static string LastFinding(Finding finding, bool withFoot, FarmCalendar calendar) => string.Create(
        CultureInfo.InvariantCulture,
        $"{calendar.DayOf(finding.At):yyyy-MM-dd}{(withFoot ? $" {finding.Foot.InWords()}" : "")}: {finding.InWords()}");

    private static string? Note(TrimListEntry entry, CowRegistration? known, DateTimeOffset? lastSeen, TrimListInputs inputs)
    {
        var sentences = new List<string>();
        // A dry cow crosses no platform; one that should and does not may be the lamest of all.
        var isTrouble = entry.Reason is TrimListReason.Alert or TrimListReason.NotRecovering;
        if (isTrouble && known?.DriedOffOn is null && lastSeen is { } seen && inputs.AsOf - seen > inputs.NotSeenAfter)
            sentences.Add(string.Create(CultureInfo.InvariantCulture, $"Not seen since {inputs.Calendar.DayOf(seen):yyyy-MM-dd}."));
        if (TrimListOrder.NoteFor(entry.Leg, entry.Pattern) is { } lift)
            sentences.Add(lift);
        sentences.AddRange(entry.Also);
        if (entry.HasActiveDermatitis)
            sentences.Add("Active digital dermatitis: disinfect the knives after her.");
        return sentences.Count == 0 ? null : string.Join(' ', sentences);
    }

    private static bool HasActiveDermatitis(IEnumerable<Finding> findings, DateTimeOffset asOf)
    {
        var states = FootCare.StateOf(findings, asOf);
        return Legs.All.Any(foot => states[foot].HasActiveDermatitis);
    }
}
