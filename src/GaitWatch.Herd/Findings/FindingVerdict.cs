namespace GaitWatch.Herd;

/// <summary>What is to be done with a finding that is sent.</summary>
public enum FindingVerdict
{
    /// <summary>Its id is new: keep it.</summary>
    New,

    /// <summary>It is known, word for word: nothing to do.</summary>
    Known,

    /// <summary>Its id is known with another body: refuse it; a correction goes another way.</summary>
    Conflict,
}
