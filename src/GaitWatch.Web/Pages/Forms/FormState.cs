using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>A form that was sent and not taken: shown again with what was typed and what is wrong said at the field.</summary>
/// <param name="Form">Which form of the page.</param>
/// <param name="Values">What was typed, by field.</param>
/// <param name="Fields">The fields at fault.</param>
public sealed record FormState(string Form, IReadOnlyDictionary<string, string> Values, IReadOnlySet<string> Fields)
{
    internal static FormState Of(string form, IFormCollection sent, Refusal refused) => new(
        form, sent.ToDictionary(field => field.Key, field => field.Value.ToString(), StringComparer.Ordinal), refused.Faults.ToErrors().Keys.ToHashSet(StringComparer.Ordinal));

    /// <summary>What was typed into a field of a form; another text where that form was not sent.</summary>
    public static string ValueOf(FormState? state, string form, string field, string otherwise = "") =>
        state?.Form == form && state.Values.TryGetValue(field, out var typed) ? typed : otherwise;

    /// <summary>Whether a field of a form is at fault.</summary>
    public static bool IsFaulty(FormState? state, string form, string field) => state?.Form == form && state.Fields.Contains(field);
}
