using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace GaitWatch.Herd;

/// <summary>Codes, words and nature of the lesions.</summary>
/// <remarks>Codes: ICAR Claw Health Atlas, 2nd ed. 2020, listed from memory; where a copy is at hand the list is to be checked against it.</remarks>
public static class Lesions
{
    private static readonly FrozenDictionary<Lesion, (string Code, string Words, LesionSite Site)> Table =
        new Dictionary<Lesion, (string, string, LesionSite)>
        {
            [Lesion.AsymmetricClaws] = ("AC", "asymmetric claws", LesionSite.ClawShape),
            [Lesion.BulbUlcer] = ("BU", "bulb ulcer", LesionSite.SoleHorn),
            [Lesion.CorkscrewClaw] = ("CC", "corkscrew claw", LesionSite.ClawShape),
            [Lesion.ConcaveDorsalWall] = ("CD", "concave dorsal wall", LesionSite.ClawShape),
            [Lesion.DigitalDermatitis] = ("DD", "digital dermatitis", LesionSite.Skin),
            [Lesion.DoubleSole] = ("DS", "double sole", LesionSite.SoleHorn),
            [Lesion.AxialHornFissure] = ("HFA", "axial horn fissure", LesionSite.WallHorn),
            [Lesion.HorizontalHornFissure] = ("HFH", "horizontal horn fissure", LesionSite.WallHorn),
            [Lesion.VerticalHornFissure] = ("HFV", "vertical horn fissure", LesionSite.WallHorn),
            [Lesion.HornFissure] = ("HF", "horn fissure", LesionSite.WallHorn),
            [Lesion.HeelHornErosion] = ("HHE", "heel horn erosion", LesionSite.SoleHorn),
            [Lesion.InterdigitalDermatitis] = ("ID", "interdigital dermatitis", LesionSite.Skin),
            [Lesion.InterdigitalHyperplasia] = ("IH", "interdigital hyperplasia", LesionSite.Skin),
            [Lesion.InterdigitalPhlegmon] = ("IP", "interdigital phlegmon", LesionSite.Skin),
            [Lesion.ScissorClaws] = ("SC", "scissor claws", LesionSite.ClawShape),
            [Lesion.SoleHaemorrhage] = ("SH", "sole haemorrhage", LesionSite.SoleHorn),
            [Lesion.CircumscribedSoleHaemorrhage] = ("SHC", "circumscribed sole haemorrhage", LesionSite.SoleHorn),
            [Lesion.DiffuseSoleHaemorrhage] = ("SHD", "diffuse sole haemorrhage", LesionSite.SoleHorn),
            [Lesion.SoleUlcer] = ("SU", "sole ulcer", LesionSite.SoleHorn),
            [Lesion.CoronetOrBulbSwelling] = ("SW", "swelling of coronet or bulb", LesionSite.Elsewhere),
            [Lesion.ToeNecrosis] = ("TN", "toe necrosis", LesionSite.SoleHorn),
            [Lesion.ThinSole] = ("TS", "thin sole", LesionSite.SoleHorn),
            [Lesion.ToeUlcer] = ("TU", "toe ulcer", LesionSite.SoleHorn),
            [Lesion.Ulcer] = ("U", "ulcer", LesionSite.SoleHorn),
            [Lesion.WhiteLineDisease] = ("WL", "white line disease", LesionSite.SoleHorn),
            [Lesion.WhiteLineAbscess] = ("WLA", "white line abscess", LesionSite.SoleHorn),
            [Lesion.WhiteLineFissure] = ("WLF", "white line fissure", LesionSite.SoleHorn),
            [Lesion.ForeignBody] = ("foreign-body", "foreign body", LesionSite.Elsewhere),
            [Lesion.Other] = ("other", "something else", LesionSite.Elsewhere),
            [Lesion.None] = ("none", "nothing found", LesionSite.Elsewhere),
        }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, Lesion> ByCode =
        Table.ToFrozenDictionary(entry => entry.Value.Code, entry => entry.Key, StringComparer.Ordinal);

    /// <summary>The lesion on the wire: an ICAR code, <c>foreign-body</c>, <c>other</c> or <c>none</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no lesion.</exception>
    public static string WireName(this Lesion lesion) => Of(lesion).Code;

    /// <summary>The lesion in the trade's words, such as "sole ulcer".</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no lesion.</exception>
    public static string InWords(this Lesion lesion) => Of(lesion).Words;

    /// <summary>What it is a lesion of.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no lesion.</exception>
    public static LesionSite Site(this Lesion lesion) => Of(lesion).Site;

    /// <summary>Reads a wire name; false when no lesion has it. Codes are in capitals.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out Lesion lesion)
    {
        lesion = default;
        return text is not null && ByCode.TryGetValue(text, out lesion);
    }

    private static (string Code, string Words, LesionSite Site) Of(Lesion lesion) => Table.TryGetValue(lesion, out var entry)
        ? entry
        : throw new ArgumentOutOfRangeException(nameof(lesion), lesion, "Not a lesion of the contract.");
}
