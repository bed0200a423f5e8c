namespace GaitWatch.Web;

/// <summary>What a day's passages told of one leg.</summary>
/// <param name="Day">The farm's day.</param>
/// <param name="Passages">How many passages it rests on.</param>
/// <param name="Share">Mean share of her weight on the leg, 0 to 1.</param>
/// <param name="Normal">Her own normal share of the leg; null while it is being learnt.</param>
/// <param name="Spread">Standard deviation of one passage's share around it; null while it is being learnt.</param>
/// <param name="Evidence">The day's largest evidence that the leg carries less, as a fraction of the limit.</param>
public sealed record LegDay(DateOnly Day, int Passages, double Share, double? Normal, double? Spread, double Evidence);
