using GaitWatch.Herd;

namespace GaitWatch.Web.Tests;

public sealed class LesionOfferTests
{
    [Fact]
    public void Every_lesion_is_offered_once()
    {
        // "Nothing found" has a button of its own.
        var offered = LesionOffers.All.Select(offer => offer.Lesion).Append(Lesion.None).ToArray();
        Assert.Equal(Enum.GetValues<Lesion>().Order(), offered.Order());
    }

    [Fact]
    public void A_proposed_zone_is_one_that_can_be()
    {
        Assert.All(LesionOffers.All.Where(offer => offer.Zone is not null), offer => Assert.Contains(offer.Zone!.Value, offer.Zones));
        // The usual site of a sole ulcer is where sole and heel meet. Source: ICAR Claw Health Atlas, 2nd ed. 2020 ("specific location (zone 4)"), from memory.
        Assert.Equal(4, LesionOffers.All.Single(offer => offer.Lesion == Lesion.SoleUlcer).Zone);
    }

    [Fact]
    public void Zones_that_cannot_be_are_not_offered()
    {
        int[] Zones(Lesion lesion) => [.. LesionOffers.All.Single(offer => offer.Lesion == lesion).Zones];
        Assert.Equal([1, 2, 3, 4, 5, 6], Zones(Lesion.SoleUlcer));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], Zones(Lesion.WhiteLineAbscess));
        Assert.Equal([0, 9, 10], Zones(Lesion.InterdigitalHyperplasia));
        Assert.Equal([1, 2, 3, 7, 8], Zones(Lesion.VerticalHornFissure));
    }

    [Fact]
    public void Every_zone_is_drawn_or_stands_beside()
    {
        // Zones 0 to 10 of the international claw map; 11 and 12 are to be read from the published figure.
        Assert.Equal(Enumerable.Range(0, 11), ClawZones.Drawn);
    }
}
