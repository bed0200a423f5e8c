using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>How the closing of an alert stands in a history.</summary>
public static class AlertClosings
{
    /// <summary>The step it is; its key tells every closing from every other.</summary>
    public static CowEventInput ToInput(this CloseAlertWrite write) => new(
        write.Closed, $"{write.Closed.Cow}/closed/{write.Closed.Pattern}/{write.Closed.Leg}/{write.Closed.Reason}/{write.Closed.By}/{write.Closed.Note}");
}
