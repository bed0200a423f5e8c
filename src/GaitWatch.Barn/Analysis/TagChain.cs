using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>
/// Crossings and tag reads that follow each other so closely that whose crossing one is may depend on another. Over a time
/// longer than the tag window without a read and without a crossing under way nothing carries: every read before it has
/// expired.
/// </summary>
/// <param name="From">The first read or contact.</param>
/// <param name="To">The last read or lift.</param>
internal readonly record struct TagChain(DateTimeOffset From, DateTimeOffset To)
{
    /// <summary>Grows a span by everything that is chained to it.</summary>
    /// <param name="seed">The span.</param>
    /// <param name="crossings">First contact and last lift of each crossing.</param>
    /// <param name="tags">The reads.</param>
    /// <param name="window">How long a read waits.</param>
    public static TagChain Around(
        TagChain seed, IEnumerable<(DateTimeOffset FirstContact, DateTimeOffset LastLift)> crossings, IEnumerable<TagRead> tags, TimeSpan window)
    {
        var pieces = crossings.Select(crossing => new TagChain(crossing.FirstContact, crossing.LastLift))
            .Concat(tags.Select(read => new TagChain(read.At, read.At)))
            .Append(seed)
            .OrderBy(piece => piece.From);
        TagChain? chain = null;
        foreach (var piece in pieces)
        {
            if (chain is { } open && piece.From - open.To <= window)
                chain = open with { To = piece.To > open.To ? piece.To : open.To };
            else if (chain is { } closed && closed.To >= seed.To)
                break;
            else
                chain = piece;
        }

        return chain!.Value;
    }
}
