using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>When a sound cow's claws are due. Common practice, no source; each is a setting.</summary>
public sealed record RoutineTrimOptions
{
    /// <summary>Whether routine trims are listed at all.</summary>
    public bool IsOn { get; init; } = true;

    /// <summary>Days after drying off within which a trim at dry-off is still due.</summary>
    public int AfterDryOffDays { get; init; } = 21;

    /// <summary>Days in milk from which the trim in milk is due.</summary>
    public int FromDaysInMilk { get; init; } = 60;

    /// <summary>Days in milk until which the trim in milk is due.</summary>
    public int ToDaysInMilk { get; init; } = 100;

    /// <summary>A heifer is due from this many days before calving.</summary>
    public int HeiferFromDaysBeforeCalving { get; init; } = 56;

    /// <summary>A heifer is due until this many days before calving.</summary>
    public int HeiferToDaysBeforeCalving { get; init; } = 28;

    /// <summary>No routine trim within this many days before calving.</summary>
    public int NoneWithinDaysBeforeCalving { get; init; } = 28;

    /// <summary>A cow trimmed this recently is not due.</summary>
    public int NotWithinDaysOfTrim { get; init; } = 42;

    /// <summary>Everything wrong with the settings: name and sentence, empty when nothing is.</summary>
    public ImmutableArray<(string Field, string Fault)> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var (name, days) in new[]
        {
            (nameof(AfterDryOffDays), AfterDryOffDays), (nameof(FromDaysInMilk), FromDaysInMilk), (nameof(HeiferToDaysBeforeCalving), HeiferToDaysBeforeCalving),
            (nameof(NoneWithinDaysBeforeCalving), NoneWithinDaysBeforeCalving), (nameof(NotWithinDaysOfTrim), NotWithinDaysOfTrim),
        })
        {
            if (days is < 0 or > 1000)
                faults.Add((name, $"{name} is {days}: 0 to 1000 days."));
        }

        if (ToDaysInMilk < FromDaysInMilk)
            faults.Add((nameof(ToDaysInMilk), $"{nameof(ToDaysInMilk)} is {ToDaysInMilk}: not before {nameof(FromDaysInMilk)} ({FromDaysInMilk})."));
        if (HeiferFromDaysBeforeCalving < HeiferToDaysBeforeCalving)
        {
            faults.Add((nameof(HeiferFromDaysBeforeCalving),
                $"{nameof(HeiferFromDaysBeforeCalving)} is {HeiferFromDaysBeforeCalving}: at least {nameof(HeiferToDaysBeforeCalving)} ({HeiferToDaysBeforeCalving}), for it lies farther from calving."));
        }

        return faults.ToImmutable();
    }
}
