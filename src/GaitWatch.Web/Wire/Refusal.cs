using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GaitWatch.Web;

/// <summary>Why a request is not served: an RFC 9457 problem that names the field and what would be right.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Title">What kind of trouble it is; the same for every problem of that kind.</param>
/// <param name="Faults">The fields and what is wrong with each.</param>
internal sealed record Refusal(int Status, string Title, Faults Faults)
{
    public static Refusal Invalid(Faults faults) => new(StatusCodes.Status400BadRequest, "The request cannot be used as it is.", faults);

    public static Refusal NotFound(string field, string sentence) =>
        new(StatusCodes.Status404NotFound, "There is nothing of that name.", Faults.Of(field, sentence));

    public static Refusal Conflict(string field, string sentence) =>
        new(StatusCodes.Status409Conflict, "The request does not fit what is there.", Faults.Of(field, sentence));

    public static Refusal Gone(string field, string sentence) =>
        new(StatusCodes.Status410Gone, "It is no more.", Faults.Of(field, sentence));

    public static Refusal TooLarge(string field, string sentence) =>
        new(StatusCodes.Status413PayloadTooLarge, "The body is too large.", Faults.Of(field, sentence));

    public static Refusal WrongMediaType(string sentence) =>
        new(StatusCodes.Status415UnsupportedMediaType, "The body is of a kind that this route does not take.", Faults.Of("Content-Type", sentence));

    public static Refusal UnknownCow(string cow) =>
        NotFound("cow", $"cow is '{cow}': no cow of that name is registered or has crossed a platform; GET /api/cows lists those that are.");

    /// <summary>The problem as it goes over the wire; <paramref name="more"/> are further members of it.</summary>
    public ProblemHttpResult ToResult(params ReadOnlySpan<KeyValuePair<string, object?>> more)
    {
        var problem = new HttpValidationProblemDetails(Faults.ToErrors()) { Status = Status, Title = Title, Detail = Faults.ToString() };
        foreach (var (name, value) in more)
            problem.Extensions[name] = value;
        return TypedResults.Problem(problem);
    }
}
