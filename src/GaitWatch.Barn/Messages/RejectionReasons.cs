namespace GaitWatch.Barn;

/// <summary>The short fixed words that say why a message is kept as rejected.</summary>
public static class RejectionReasons
{
    /// <summary>Not JSON in UTF-8, not an object, or a field stands twice.</summary>
    public const string BadJson = "bad-json";

    /// <summary><c>v</c> is not a version this service knows.</summary>
    public const string UnknownVersion = "unknown-version";

    /// <summary>The topic is none of the scheme.</summary>
    public const string UnknownTopic = "unknown-topic";

    /// <summary>No platform of that name is set up.</summary>
    public const string UnknownPlatform = "unknown-platform";

    /// <summary>The platform has no load cell of that name.</summary>
    public const string UnknownCell = "unknown-cell";

    /// <summary>A load cell of the platform is not in the frame.</summary>
    public const string MissingCell = "missing-cell";

    /// <summary>The cells of a frame have different numbers of samples.</summary>
    public const string UnequalCells = "unequal-cells";

    /// <summary>The frame holds no sample.</summary>
    public const string EmptyFrame = "empty-frame";

    /// <summary>The sampling rate is none that can be analysed.</summary>
    public const string BadHz = "bad-hz";

    /// <summary>Something else stands where a finite number must.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>A number lies where no scale, counter or clock would put it.</summary>
    public const string OutOfRange = "out-of-range";

    /// <summary>The tag is no animal code by ISO 11784.</summary>
    public const string BadTag = "bad-tag";

    /// <summary>A time is not RFC 3339, or no clock that was ever set tells it.</summary>
    public const string BadTime = "bad-time";

    /// <summary>A live message's time lies more than a day ahead of its arrival.</summary>
    public const string InFuture = "in-future";

    /// <summary>A frame or tag from a time whose frames are no longer kept.</summary>
    public const string TooLate = "too-late";

    /// <summary>A field that must be there is not.</summary>
    public const string MissingField = "missing-field";

    /// <summary>A field holds another type than the contract's.</summary>
    public const string WrongType = "wrong-type";

    /// <summary>The message is longer than is read.</summary>
    public const string TooLarge = "too-large";

    /// <summary>Its analysis failed again and again: a defect of the service, set aside so that all else goes on.</summary>
    public const string AnalysisFailed = "analysis-failed";

    /// <summary>The store refused this one input: a defect of the service, set aside so that all else goes on.</summary>
    public const string NotStorable = "not-storable";
}
