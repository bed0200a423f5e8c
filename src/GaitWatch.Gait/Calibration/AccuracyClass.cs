namespace GaitWatch.Gait;

/// <summary>Accuracy class of a weighing instrument (OIML R 76-1), as on its plate.</summary>
public enum AccuracyClass
{
    /// <summary>Special.</summary>
    I,

    /// <summary>High.</summary>
    II,

    /// <summary>Medium: what cattle are weighed on.</summary>
    III,

    /// <summary>Ordinary; on plates IIII, never IV.</summary>
    IIII,
}

/// <summary>Accuracy classes by their names.</summary>
public static class AccuracyClasses
{
    /// <summary>Reads <c>I</c>, <c>II</c>, <c>III</c> or <c>IIII</c>.</summary>
    public static bool TryParse(string? text, out AccuracyClass accuracyClass) =>
        Enum.TryParse(text, ignoreCase: false, out accuracyClass) && Enum.IsDefined(accuracyClass) && !char.IsAsciiDigit(text![0]);
}
