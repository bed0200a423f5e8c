using System.Collections.Immutable;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>A lesion as it is offered at the chute.</summary>
/// <param name="Lesion">The lesion.</param>
/// <param name="Group">Under which heading it stands.</param>
/// <param name="Zone">The zone proposed with it; null where the lesion does not tell.</param>
internal sealed record LesionOffer(Lesion Lesion, LesionGroupName Group, int? Zone)
{
    /// <summary>The zones that can be said of it, by the rules of a finding.</summary>
    public ImmutableArray<int> Zones { get; } = [.. ClawZones.Drawn.Where(zone => IsPossible(Lesion, zone))];

    /// <summary>Whether it belongs to one claw; a lesion of the skin belongs to the foot.</summary>
    public bool HasClaw { get; } = Lesion.Site() != LesionSite.Skin;

    private static bool IsPossible(Lesion lesion, int zone) => FindingFaults.Of(new Finding
    {
        Id = "-", Cow = "-", At = DateTimeOffset.UnixEpoch, Foot = default, Lesion = lesion, Zone = zone,
    }).All(fault => fault.Field != "zone");
}

/// <summary>Headings under which lesions are offered.</summary>
internal enum LesionGroupName
{
    /// <summary>What a trimmer finds most.</summary>
    Often,

    /// <summary>The rest of sole, white line, heel and toe.</summary>
    Sole,

    /// <summary>The rest of the skin, and swellings.</summary>
    Skin,

    /// <summary>The wall and the shape of the claw.</summary>
    Wall,
}
