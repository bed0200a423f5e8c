namespace GaitWatch.Herd;

/// <summary>More lesions of a kind from one pen within a few days than chance brings.</summary>
/// <param name="Pen">The pen.</param>
/// <param name="Group">The kind.</param>
/// <param name="From">Day of the first.</param>
/// <param name="To">Day of the last.</param>
/// <param name="Count">How many new cases.</param>
/// <param name="Expected">How many were to be expected there in so many days.</param>
/// <param name="PValue">How likely chance alone brings such a cluster anywhere in the herd.</param>
/// <param name="Sentence">What is seen and where to look.</param>
public sealed record LesionCluster(string Pen, LesionGroup Group, DateOnly From, DateOnly To, int Count, double Expected, double PValue, string Sentence);
