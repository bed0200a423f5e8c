namespace GaitWatch.Herd;

/// <summary>The five steps of scoring a cow's walk by eye. Scale: Sprecher D.J. et al. 1997, Theriogenology 47:1179-1187; the words are ours.</summary>
public static class LocomotionScore
{
    /// <summary>A sound walk.</summary>
    public const int Least = 1;

    /// <summary>Hardly able to walk.</summary>
    public const int Most = 5;

    /// <summary>What is seen at a score.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The score is not 1 to 5.</exception>
    public static string InWords(int score) => score switch
    {
        1 => "sound: back flat at rest and under way, even steps",
        2 => "slightly off: back flat at rest, rounded under way",
        3 => "lame: back rounded at rest and under way, shorter steps on one leg or more",
        4 => "clearly lame: spares one leg or more, one careful step at a time",
        5 => "severely lame: will not put weight on a leg, hardly moves",
        _ => throw new ArgumentOutOfRangeException(nameof(score), score, $"A locomotion score is {Least} to {Most}."),
    };
}
