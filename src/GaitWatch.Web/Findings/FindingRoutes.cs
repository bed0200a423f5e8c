using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What was found and done at the chute, and how the treated feet fare.</summary>
internal static class FindingRoutes
{
    public static void MapFindings(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/findings", ListAsync)
            .Describe("Findings", "What was found and done at the chute, oldest first, as it reads now.")
            .Gives<IReadOnlyList<FindingView>>().Refuses(400, 404);
        api.MapPost("/api/cows/{cow}/findings", RecordAsync)
            .Describe("Findings", "Takes what was found in a foot and done to it. Sent twice under one id it counts once; another body under a known id is refused.")
            .Takes<FindingBody>("application/json")
            .Gives<FindingView>().Gives<FindingView>(StatusCodes.Status201Created).Stores().Refuses(400, 409, 413, 415);
        api.MapPut("/api/findings/{id}", CorrectAsync)
            .Describe("Findings", "Corrects a finding; the earlier wording is kept.")
            .Takes<FindingBody>("application/json")
            .Gives<FindingView>().Stores().Refuses(400, 404, 413, 415);
        api.MapDelete("/api/findings/{id}", WithdrawAsync)
            .Describe("Findings", "Takes back a finding that was entered by mistake: it counts no more, its wordings are kept. Taken back twice it counts once.")
            .Gives<FindingView>().Stores().Refuses(400, 404, 413, 415);
        api.MapGet("/api/cows/{cow}/recovery", RecoveryAsync)
            .Describe("Findings", "One assessment per treated foot of a cow, oldest treatment first.")
            .Gives<IReadOnlyList<RecoveryView>>().Refuses(404);
    }

    private static async Task<Results<Ok<IReadOnlyList<FindingView>>, ProblemHttpResult>> ListAsync(
        HttpContext http, BarnStore store, string? cow, string? from, string? to, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var log = await store.Reader.FindingsAsync(http.RequestAborted);
        if (!string.IsNullOrEmpty(cow))
            cow = await store.Reader.CowMeantAsync(cow, http.RequestAborted);
        if (!string.IsNullOrEmpty(cow) && await IsUnknownAsync(store, cow, log, http.RequestAborted))
            return Refusal.UnknownCow(cow).ToResult();
        var wanted = (string.IsNullOrEmpty(cow) ? log.Findings : log.OfCow(cow))
            .Where(finding => (begin is null || finding.At >= begin) && (end is null || finding.At < end))
            .Select(finding => finding.Id).ToArray();
        return TypedResults.Ok<IReadOnlyList<FindingView>>([.. Paging.Cut(http, part, wanted).Select(id => FindingView.Of(log.Find(id)!, log))]);
    }

    public static Task<IResult> RecordAsync(HttpContext http, string cow, BarnStore store, WriteDesk desk, RecordFinding route) =>
        desk.ServeAsync(http, route, async decision =>
        {
            var sent = (Finding)decision.Account!;
            var log = await store.Reader.FindingsAsync(http.RequestAborted);
            // Two bodies under one new id may have come at once: one of them is the finding.
            if (log.Find(sent.Id) is not { } history || history.Versions.All(version => version.Finding != sent))
                return RecordFinding.Conflict(sent.Id).ToResult();
            var view = FindingView.Of(history, log);
            if (await store.Reader.CowAsync(history.Current.Cow, http.RequestAborted) is null)
                view = view with { Warnings = [.. view.Warnings, UnknownCow(history.Current.Cow)] };
            return decision.Writes.IsEmpty ? TypedResults.Ok(view) : TypedResults.Created(view.Correctable!.Route, view);
        });

    private static Task<IResult> CorrectAsync(HttpContext http, string id, BarnStore store, WriteDesk desk, CorrectFinding route) =>
        desk.ServeAsync(http, route, async decision =>
        {
            var log = await store.Reader.FindingsAsync(http.RequestAborted);
            return TypedResults.Ok(FindingView.Of(log.Find(((Finding)decision.Account!).Id)!, log));
        });

    public static Task<IResult> WithdrawAsync(HttpContext http, string id, string? at, BarnStore store, WriteDesk desk, WithdrawFinding route) =>
        desk.ServeAsync(http, route, async decision =>
        {
            var log = await store.Reader.FindingsAsync(http.RequestAborted);
            return TypedResults.Ok(FindingView.Of(log.Find(((Finding)decision.Account!).Id)!, log));
        });

    private static async Task<Results<Ok<IReadOnlyList<RecoveryView>>, ProblemHttpResult>> RecoveryAsync(BarnStore store, string cow, CancellationToken cancellation)
    {
        cow = await store.Reader.CowMeantAsync(RouteNames.Read(cow), cancellation);
        if (await IsUnknownAsync(store, cow, await store.Reader.FindingsAsync(cancellation), cancellation))
            return Refusal.UnknownCow(cow).ToResult();
        return TypedResults.Ok<IReadOnlyList<RecoveryView>>([.. (await store.Reader.RecoveriesOfAsync(cow, cancellation)).Select(RecoveryView.Of)]);
    }

    // One that was at the chute is known by that.
    private static async Task<bool> IsUnknownAsync(BarnStore store, string cow, FindingLog log, CancellationToken cancellation) =>
        !log.OfCow(cow).Any() && await store.Reader.CowAsync(cow, cancellation) is null;

    private static FindingWarningView UnknownCow(string cow) => new(
        "unknown-cow", "cow", $"No cow '{cow}' is registered or has crossed a platform: the finding is kept; if the number is wrong, correct it.");
}
