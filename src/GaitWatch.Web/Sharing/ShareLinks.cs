using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>
/// Links that open one visit's list and chute to whoever holds them, and nothing else. They rest on no session and no list of
/// links: the signature says that the farm gave it out, the calendar of visits whether it still holds.
/// </summary>
internal sealed class ShareLinks(BarnStore store, TimeProvider time, WebOptions options)
{
    private readonly Lazy<byte[]> _key = new(() => ShareKey.Of(store.Options.DataDirectory), LazyThreadSafetyMode.PublicationOnly);

    /// <summary>When a link for a visit ends: with the day after the visit, at the farm's midnight.</summary>
    public DateTimeOffset EndOf(DateOnly visit) => store.Options.Calendar.EndOf(visit.AddDays(1));

    /// <summary>Gives out a link for a visit; null where none is planned on that day, or its link would have ended already.</summary>
    /// <param name="visit">The visit's day; null for the next visit from today.</param>
    /// <param name="request">Tells under which name this machine was reached.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<ShareLink?> GiveAsync(DateOnly? visit, HttpRequest request, CancellationToken cancellation)
    {
        var book = await store.Reader.VisitsAsync(cancellation);
        var now = time.GetUtcNow();
        var planned = visit is { } day ? book.On(day) : book.NextFrom(store.Options.Calendar.DayOf(now));
        if (planned is null || EndOf(planned.Visit.Date) <= now)
            return null;
        var token = new ShareToken(planned.Visit.Date, now).Sign(_key.Value);
        return new ShareLink(planned.Visit.Date, new Uri(BaseOf(request), $"share/{token}"), EndOf(planned.Visit.Date));
    }

    /// <summary>Looks whether a link holds.</summary>
    /// <returns>What it says, or why it does not hold.</returns>
    public async Task<(ShareToken? Said, Refusal? Refused)> OpenAsync(string token, CancellationToken cancellation)
    {
        if (!ShareToken.TryRead(token, _key.Value, out var said))
            return (null, Refusal.NotFound("link", "The link was not given out by this farm, or not copied whole: ask the farm for it again."));
        if (time.GetUtcNow() >= EndOf(said.Visit))
            return (null, Refusal.Gone("link", FormattableString.Invariant($"The link was for the visit of {said.Visit:yyyy-MM-dd} and ended with the day after: ask the farm for one for the next visit.")));
        var book = await store.Reader.VisitsAsync(cancellation);
        // Planned anew on the same day after it was cancelled or put off, it is another visit: its link is another link.
        if (book.On(said.Visit) is null || book.Slips.Any(slip => slip.Date == said.Visit && slip.At >= said.IssuedAt))
            return (null, Refusal.Gone("link", FormattableString.Invariant($"The visit of {said.Visit:yyyy-MM-dd} was moved or cancelled: ask the farm for a new link.")));
        return (said, null);
    }

    // Set by the farm; else the name by which this machine was reached, at the share's own port where it has one.
    private Uri BaseOf(HttpRequest request)
    {
        if (options.ShareAddress is { } set)
            return set;
        var host = request.Host;
        return options.ShareEndpoints.IsEmpty
            ? new Uri($"{request.Scheme}://{host.Value}/")
            : new Uri($"{options.ShareEndpoints[0].Scheme}://{new HostString(host.Host, options.ShareEndpoints[0].Port).Value}/");
    }
}
