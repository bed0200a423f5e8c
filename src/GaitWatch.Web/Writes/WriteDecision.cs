using System.Collections.Immutable;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>What is to be done with a write: take it as inputs of the log, or refuse it. Nothing has been done yet.</summary>
internal sealed record WriteDecision
{
    /// <summary>Why it is not taken; null when it is.</summary>
    public Refusal? Refused { get; private init; }

    /// <summary>Where to send it instead, when what it is about goes by another id now.</summary>
    public string? MovedTo { get; private init; }

    /// <summary>What goes into the log; nothing when refused.</summary>
    public ImmutableArray<FarmWrite> Writes { get; private init; } = [];

    /// <summary>What more is to be told of it, whether taken or not; null when nothing.</summary>
    public object? Account { get; private init; }

    public static WriteDecision Refuse(Refusal refusal, object? account = null) => new() { Refused = refusal, Account = account };

    public static WriteDecision Elsewhere(string route) => new() { MovedTo = route };

    public static WriteDecision Take(params ImmutableArray<FarmWrite> writes) => new() { Writes = writes };

    public static WriteDecision Take(ImmutableArray<FarmWrite> writes, object account) => new() { Writes = writes, Account = account };
}
