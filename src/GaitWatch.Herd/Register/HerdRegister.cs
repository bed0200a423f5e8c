using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>
/// The farm's cows through time. The answer to every question depends on the set of registrations alone, not on the order
/// in which they came.
/// </summary>
public sealed class HerdRegister
{
    private readonly ImmutableSortedDictionary<string, ImmutableArray<CowRegistration>> _byCow;
    private readonly Dictionary<Eid, ImmutableArray<CowRegistration>> _byEid;

    /// <summary>Makes the register of these registrations, given in any order, repeated or not.</summary>
    public HerdRegister(IEnumerable<CowRegistration> registrations)
    {
        var ordered = registrations
            .Distinct()
            .OrderBy(r => r.From).ThenBy(r => r.EnteredAt).ThenBy(r => r.ToString(), StringComparer.Ordinal)
            .ToArray();
        _byCow = ordered
            .GroupBy(r => r.Cow, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(group => group.Key, group => group.ToImmutableArray(), StringComparer.Ordinal);
        _byEid = ordered
            .Where(r => r.Eid is not null)
            .GroupBy(r => r.Eid!.Value)
            .ToDictionary(group => group.Key, group => group.ToImmutableArray());
    }

    /// <summary>A register without cows.</summary>
    public static HerdRegister Empty { get; } = new([]);

    /// <summary>Every registered cow, ordered by name.</summary>
    public IEnumerable<string> Cows => _byCow.Keys;

    /// <summary>What was said of a cow, oldest first; empty when she is not registered.</summary>
    public ImmutableArray<CowRegistration> HistoryOf(string cow) => _byCow.GetValueOrDefault(cow, []);

    /// <summary>
    /// What held of a cow at an instant: the newest registration that holds from then or before, else her first one; null
    /// when she is not registered.
    /// </summary>
    public CowRegistration? At(string cow, DateTimeOffset instant)
    {
        if (!_byCow.TryGetValue(cow, out var history))
            return null;
        for (var i = history.Length - 1; i > 0; i--)
        {
            if (history[i].From <= instant)
                return history[i];
        }

        return history[0];
    }

    /// <summary>
    /// Whose tag it was at an instant. Of several cows that claim it the one that claimed it last; before the first claim the
    /// one that claimed it first; a tag nobody claims names a cow of its own, after its 15 digits.
    /// </summary>
    public string CowOf(Eid eid, DateTimeOffset instant)
    {
        if (!_byEid.TryGetValue(eid, out var claims))
            return eid.ToString();
        for (var i = claims.Length - 1; i >= 0; i--)
        {
            if (claims[i].From <= instant && At(claims[i].Cow, instant) == claims[i])
                return claims[i].Cow;
        }

        // Before every claim: a cow's first registration reaches back to her first passage.
        foreach (var claim in claims)
        {
            if (claim.From > instant && At(claim.Cow, instant) == claim)
                return claim.Cow;
        }

        return eid.ToString();
    }

    /// <summary>
    /// The cow that is meant where a number or a tag was given: a registered number is itself; a tag is the cow that wore it then; what
    /// is neither stays as it is.
    /// </summary>
    /// <param name="named">A number, or the 15 digits of a tag, in groups or not.</param>
    /// <param name="instant">When.</param>
    public string Meant(string named, DateTimeOffset instant)
    {
        if (_byCow.ContainsKey(named))
            return named;
        var digits = named.Replace(" ", "", StringComparison.Ordinal);
        return Eid.TryParse(digits, out var eid, out _) ? CowOf(eid, instant) : named;
    }

    /// <summary>The tags that a cow has ever worn by this register.</summary>
    public IEnumerable<Eid> TagsOf(string cow) => HistoryOf(cow).Select(r => r.Eid).OfType<Eid>().Distinct();

    /// <summary>What detection has to know of the herd: calvings, dryings off, departures, replaced tags, each once, in no order.</summary>
    /// <param name="calendar">The farm's days; a date counts from its beginning.</param>
    public IEnumerable<CowEventInput> Events(FarmCalendar calendar)
    {
        foreach (var (cow, history) in _byCow)
        {
            foreach (var day in Days(history, r => r.CalvedOn))
                yield return Input(new Calved(cow, calendar.StartOf(day)), "calved");
            foreach (var day in Days(history, r => r.DriedOffOn))
                yield return Input(new DriedOff(cow, calendar.StartOf(day)), "dried-off");
            foreach (var day in Days(history, r => r.LeftOn))
                yield return Input(new LeftHerd(cow, calendar.StartOf(day)), "left-herd");
            for (var i = 1; i < history.Length; i++)
            {
                if (history[i].Eid is not null && history[i - 1].Eid is not null && history[i].Eid != history[i - 1].Eid)
                    yield return Input(new TagReplaced(cow, history[i].From), "tag-replaced");
            }
        }
    }

    private static IEnumerable<DateOnly> Days(ImmutableArray<CowRegistration> history, Func<CowRegistration, DateOnly?> day) =>
        history.Select(day).OfType<DateOnly>().Distinct();

    private static CowEventInput Input(CowEvent happened, string what) => new(happened, $"{happened.Cow}/{what}");
}
