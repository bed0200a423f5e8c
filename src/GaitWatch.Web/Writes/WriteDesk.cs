using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Takes a write over HTTP: reads it, has it judged, makes it durable and waits until the state shows it.</summary>
internal sealed class WriteDesk(BarnStore store, TimeProvider time, WebOptions options) : IDisposable
{
    // What is judged by what was entered before is judged and stored before the next is: of two bodies under one id one is refused.
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>Serves one write.</summary>
    /// <param name="http">The request.</param>
    /// <param name="route">Who judges it.</param>
    /// <param name="answer">Makes the answer once the state shows the write.</param>
    /// <param name="refuse">Makes the answer to a refused one; null for the plain problem.</param>
    public async Task<IResult> ServeAsync(
        HttpContext http, WriteRoute route, Func<WriteDecision, Task<IResult>> answer, Func<WriteDecision, IResult>? refuse = null)
    {
        var (body, wrongBody) = route.BodyIsOptional && BodyReader.IsAbsent(http.Request)
            ? (default, null)
            : await BodyReader.ReadAsync(http.Request, route.MediaType, route.MostBytes, http.RequestAborted);
        if (wrongBody is not null)
            return wrongBody.ToResult();
        var request = new WriteRequest(http.Request.RouteValues, http.Request.Query, body, time.GetUtcNow());
        var (decision, lastSeq) = await JudgeAsync(route, request, http.RequestAborted);
        if (decision.MovedTo is { } elsewhere)
            return TypedResults.Redirect(elsewhere, permanent: true, preserveMethod: true);
        if (decision.Refused is { } refused)
            return refuse?.Invoke(decision) ?? refused.ToResult();
        return lastSeq is not { } seq || await UntilShownAsync(seq, http.RequestAborted) ? await answer(decision) : StoredNotShown();
    }

    /// <summary>Takes what was entered into a form of a page, judged as the same write over the API.</summary>
    /// <returns>Why it was not taken; null when it was.</returns>
    public async Task<Refusal?> EnterAsync(WriteRoute route, RouteValueDictionary names, System.Text.Json.Nodes.JsonObject body, CancellationToken cancellation)
    {
        var json = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(body);
        var (decision, lastSeq) = await JudgeAsync(route, new WriteRequest(names, QueryCollection.Empty, json, time.GetUtcNow()), cancellation);
        if (decision.Refused is null && lastSeq is { } seq)
            await UntilShownAsync(seq, cancellation);
        return decision.Refused;
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    /// <summary>Makes writes durable and waits until the state shows them.</summary>
    /// <returns>False when they are durable but the state did not show them in time.</returns>
    public async Task<bool> TakeAsync(ImmutableArray<FarmWrite> writes, CancellationToken cancellation)
    {
        return await StoreAsync(writes, cancellation) is not { } seq || await UntilShownAsync(seq, cancellation);
    }

    /// <summary>Waits until the state shows everything up to a sequence number; false when it takes too long.</summary>
    public async Task<bool> UntilShownAsync(long seq, CancellationToken cancellation)
    {
        using var patience = new CancellationTokenSource(options.WriteWait, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, cancellation);
        try
        {
            await store.Progress.UntilFoldedAsync(seq, either.Token);
            return true;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return false;
        }
    }

    private async Task<(WriteDecision Decision, long? LastSeq)> JudgeAsync(WriteRoute route, WriteRequest request, CancellationToken cancellation)
    {
        if (route.ReadsWrites)
            await _turn.WaitAsync(cancellation);
        try
        {
            var decision = await route.DecideAsync(request, cancellation);
            return (decision, await StoreAsync(decision.Writes, cancellation));
        }
        finally
        {
            if (route.ReadsWrites)
                _turn.Release();
        }
    }

    private async Task<long?> StoreAsync(ImmutableArray<FarmWrite> writes, CancellationToken cancellation) => writes.IsEmpty
        ? null
        : (await store.Inputs.AppendAsync([.. writes.Select(write => new WriteInput(write))], cancellation)).LastSeq;

    private static JsonHttpResult<StoredView> StoredNotShown() =>
        TypedResults.Json(new StoredView("Stored. The analysis is behind; what was entered will show when it has caught up."), statusCode: StatusCodes.Status202Accepted);
}
