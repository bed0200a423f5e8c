using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>
/// What the rules and the API say in one English, said to people in their own words: each sentence is known by its shape, its names and
/// figures are taken out of it, and the section "Sentence" of the texts puts them in the language of the request.
/// </summary>
internal static partial class Sentences
{
    private static readonly Words s_words = new("Sentence");

    /// <summary>The key of each sentence and how it is said where it arises; {0}, {1} and so on stand for its names and figures.</summary>
    internal static ImmutableArray<(string Key, string Said)> All { get; } =
    [
        // Platforms.
        ("offline", "The platform has gone offline: check its power and network. Until it is back nobody's feet are watched there."),
        ("zero", "The empty platform reads {0} kg other than a day before, {1} times what class {2} allows in service: look for mud or a stone under the plates, then check with a test weight."),
        ("ends-left-less", "The left plate reads {0} % less at its exit end (cell {1}) than at its entry end (cell {2}), by {3} crossings, give or take {4}: {5} kg under a foot of {6} kg, where class {7} allows {8} in service."),
        ("ends-left-more", "The left plate reads {0} % more at its exit end (cell {1}) than at its entry end (cell {2}), by {3} crossings, give or take {4}: {5} kg under a foot of {6} kg, where class {7} allows {8} in service."),
        ("ends-right-less", "The right plate reads {0} % less at its exit end (cell {1}) than at its entry end (cell {2}), by {3} crossings, give or take {4}: {5} kg under a foot of {6} kg, where class {7} allows {8} in service."),
        ("ends-right-more", "The right plate reads {0} % more at its exit end (cell {1}) than at its entry end (cell {2}), by {3} crossings, give or take {4}: {5} kg under a foot of {6} kg, where class {7} allows {8} in service."),
        ("which-cell", "Which cell is wrong a test weight tells: gaitwatch calibrate {0}."),
        ("not-rescaled", "Readings are not rescaled."),
        ("sides-less", "The left plate reads {0} % less against the right than it did, fore and hind feet of the whole herd alike: {1} kg at {2} kg, where class {3} allows {4} in service."),
        ("sides-more", "The left plate reads {0} % more against the right than it did, fore and hind feet of the whole herd alike: {1} kg at {2} kg, where class {3} allows {4} in service."),
        ("both-plates", "Check both plates with a test weight: gaitwatch calibrate {0}."),
        ("weight-less", "The same cows weigh {0} % less than in the week before: {1} kg at {2} kg, where class {3} allows {4} in service."),
        ("weight-more", "The same cows weigh {0} % more than in the week before: {1} kg at {2} kg, where class {3} allows {4} in service."),
        ("unless-feed", "Unless their feed has changed, check the platform with a test weight: gaitwatch calibrate {0}."),
        ("beyond-cell", "In the check of {0} with {1} kg it read {2} kg over cell {3}, where {4} is allowed in service: have it set right at the device, then check again."),
        ("beyond-zero", "In the check of {0} with {1} kg the empty plates did not come back to their zero ({2} kg left, {3} kg right, {4} allowed): have it set right at the device, then check again."),
        ("few-tags", "Only {0} % of {1} crossings in 7 days had a tag: clean the reader, check its aim and its cable."),
        ("herd-moved", "All {0} cows of the session have moved the same way at once ({1}): that is the platform or the floor, not their feet. Its passages raise no alerts. Clean it, look for a stone or mud under the plates, and check each load cell with a known weight."),
        ("front", "front {0} % heavier"),
        ("hind", "the hind legs {0} % heavier"),
        ("left-fore", "the left fore {0} % heavier"),
        ("right-fore", "the right fore {0} % heavier"),
        ("left-hind", "the left hind {0} % heavier"),
        ("right-hind", "the right hind {0} % heavier"),

        // On the list.
        ("relapse-lf", "A relapse: the left fore was treated on {0}."),
        ("relapse-rf", "A relapse: the right fore was treated on {0}."),
        ("relapse-lh", "A relapse: the left hind was treated on {0}."),
        ("relapse-rh", "A relapse: the right hind was treated on {0}."),
        ("opposite-lf", "The opposite leg: the left fore was treated on {0}, and long lame cows often go lame on the other one (38 % in a trial). Look at both."),
        ("opposite-rf", "The opposite leg: the right fore was treated on {0}, and long lame cows often go lame on the other one (38 % in a trial). Look at both."),
        ("opposite-lh", "The opposite leg: the left hind was treated on {0}, and long lame cows often go lame on the other one (38 % in a trial). Look at both."),
        ("opposite-rh", "The opposite leg: the right hind was treated on {0}, and long lame cows often go lame on the other one (38 % in a trial). Look at both."),

        // What is not taken.
        ("no-such-flag", "id is '{0}': no alert ever had it; GET /api/alerts lists those that are."),
        ("flag-taken-back", "id is '{0}': late data took this alert back; GET /api/alerts lists those that are."),
        ("flag-not-there", "id is '{0}': there is no such alert; GET /api/alerts lists those that are."),
        ("flag-closed", "id is '{0}': this alert was closed at {1} already ({2}); only an open one can be closed."),
        ("before-raised", "at is {0}, before the alert was raised at {1}: a time after that is needed."),
        ("no-reason", "reason is missing: one of {0} is needed."),
        ("reason-unknown", "reason is '{0}': one of {1} is needed."),
        ("no-such-task", "id is '{0}': nothing of that id is to be done; GET /api/follow-ups lists what is."),
        ("task-done", "at is {0}, but this was done at {1} already; nothing is left to do."),
        ("task-before-finding", "at is {0}, before the finding of {1} that asks for it: a time after that is needed."),
        ("no-visit", "date is '{0}', where no visit is planned; GET /api/visits lists those that are."),
        ("no-visit-planned", "visit is {0}, where no visit is planned: plan it first."),
        ("no-visit-but", "date is {0}, where no visit is planned: planned are {1}."),
        ("no-visit-at-all", "date is {0}, where no visit is planned: none is planned at all."),
        ("unknown-cow", "cow is '{0}': no cow of that name is registered or has crossed a platform; GET /api/cows lists those that are."),
        ("before-herself", "before is '{0}', the cow herself: the number of the cow she is to come before, or null for the end."),
        ("before-unknown", "before is '{0}': no cow of that name is registered or has crossed a platform."),
        ("why-empty", "reason is empty: say why, in a few words; it stands beside her on the list."),
        ("why-long", "reason is '{0}': at most {1} characters on one line."),
        ("too-long", "{0} has {1} characters: at most {2} are taken."),

        // When nothing can be shown.
        ("store-unreadable", "The store cannot be read: check the data directory, its disk and its rights ({0})."),
        ("store-unavailable", "The store is not available."),
        ("failed", "GaitWatch failed to answer."),
        ("failed-log", "The service failed; its log says why. Nothing that was stored is lost."),
        ("unreadable", "The request cannot be read."),
        ("not-served", "The request cannot be served."),
    ];

    private static readonly ImmutableArray<(string Key, Regex Shape)> s_shapes =
        [.. All.OrderByDescending(sentence => sentence.Said.Length).Select(sentence => (sentence.Key, Shape(sentence.Said)))];

    /// <summary>A text in which sentences may stand, in the words of the request's language; what is not known stays as it is.</summary>
    public static string InWords(string said)
    {
        foreach (var (key, shape) in s_shapes)
        {
            said = shape.Replace(said, found =>
                s_words.With([.. found.Groups.Values.Skip(1).Select(place => (object?)string.Join(", ", InWords(place.Value).Split(", ").Select(Local)))], key));
        }

        return Words.Rule(said);
    }

    // Figures, days and reasons as the reader writes them; names stay.
    private static string Local(string value)
    {
        if (Number().IsMatch(value) && double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            return number.ToString(value[0] is '+' ? "+0.0" : "0.0##", CultureInfo.CurrentCulture);
        if (GaitWatch.Web.Days.TryParse(value, out var day))
            return FarmTimes.Date(day);
        return AlertNames.TryParse<AlertCloseReason>(value, AlertNames.WireName, out var reason) ? AlertTexts.Reason(reason) : value;
    }

    private static Regex Shape(string said) =>
        // What a sentence begins with is one word: or it would take in the sentence before.
        new(Place().Replace(Regex.Escape(said), place => place.Index == 0 ? @"(\S+)" : "(.+?)"), RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    // As Regex.Escape leaves a place.
    [GeneratedRegex(@"\\\{\d+\}")]
    private static partial Regex Place();

    [GeneratedRegex(@"^[+-]?\d+\.\d+$")]
    private static partial Regex Number();
}
