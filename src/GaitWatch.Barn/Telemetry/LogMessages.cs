using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Every sentence this project logs. Ids: 1000 intake, 1100 embedded broker, 1200 external broker, 1300 analysis,
/// 1400 publishing.
/// </summary>
internal static partial class LogMessages
{
    [LoggerMessage(1000, LogLevel.Error, "The store cannot write; {Inputs} inputs wait unacknowledged, next try in {DelaySeconds:0.0} s. {Fault}")]
    public static partial void StoreCannotWrite(this ILogger log, int inputs, double delaySeconds, string fault);

    [LoggerMessage(1001, LogLevel.Information, "The store writes again after {Failures} failed tries.")]
    public static partial void StoreBack(this ILogger log, int failures);

    [LoggerMessage(1002, LogLevel.Warning, "A batch of {Inputs} inputs failed as a whole; it is tried by halves.")]
    public static partial void BatchFailed(this ILogger log, int inputs, Exception fault);

    [LoggerMessage(1003, LogLevel.Error, "The store refused an input of kind {Kind}; it is set aside.")]
    public static partial void InputNotStorable(this ILogger log, string kind, Exception fault);

    [LoggerMessage(1004, LogLevel.Debug, "Message on {Topic} kept as rejected, {Reason}: {Detail}")]
    public static partial void MessageRejected(this ILogger log, string topic, string reason, string detail);

    [LoggerMessage(1005, LogLevel.Warning, "Tag {Eid} read on platform '{Platform}' is marked as a test transponder (code 999, ISO 11784). It is taken like any other.")]
    public static partial void TestTag(this ILogger log, string eid, string platform);

    [LoggerMessage(1100, LogLevel.Information, "The broker listens at {Host}:{Port}; {Admission}.")]
    public static partial void BrokerListening(this ILogger log, string host, int port, string admission);

    [LoggerMessage(1101, LogLevel.Warning, "Device '{ClientId}' at {EndPoint} was not admitted: its name or password is not that of GaitWatch:Mqtt:Username and GaitWatch:Mqtt:Password.")]
    public static partial void DeviceNotAdmitted(this ILogger log, string clientId, string endPoint);

    [LoggerMessage(1102, LogLevel.Warning, "Device '{ClientId}' publishes to '{Topic}', which is none of GaitWatch's topics: such messages are passed on to subscribers, not kept.")]
    public static partial void ForeignTopic(this ILogger log, string clientId, string topic);

    [LoggerMessage(1200, LogLevel.Information, "Connected to the broker at {Host}:{Port}; {Session}.")]
    public static partial void BrokerConnected(this ILogger log, string host, int port, string session);

    [LoggerMessage(1201, LogLevel.Warning, "The connection to the broker at {Host}:{Port} ended: {Reason}")]
    public static partial void BrokerLost(this ILogger log, string host, int port, string reason);

    [LoggerMessage(1202, LogLevel.Error, "The broker at {Host}:{Port} (GaitWatch:Mqtt:Host, GaitWatch:Mqtt:Port) cannot be used: {Fault}")]
    public static partial void BrokerUnreachable(this ILogger log, string host, int port, string fault);

    [LoggerMessage(1203, LogLevel.Information, "Connecting to the broker again in {DelaySeconds:0.0} s.")]
    public static partial void ConnectingAgain(this ILogger log, double delaySeconds);

    [LoggerMessage(1204, LogLevel.Debug, "An acknowledgement was lost with its connection ({Fault}); the broker sends the message again.")]
    public static partial void AcknowledgementLost(this ILogger log, string fault);

    [LoggerMessage(1205, LogLevel.Error, "Another client took the name '{ClientId}' at the broker: each service needs a name of its own (GaitWatch:Mqtt:ClientId).")]
    public static partial void SessionTakenOver(this ILogger log, string clientId);

    [LoggerMessage(1300, LogLevel.Error, "A change of at most {Inputs} inputs failed and was taken back; it is tried again with fewer.")]
    public static partial void ChangeFailed(this ILogger log, int inputs, Exception fault);

    [LoggerMessage(1301, LogLevel.Error, "Frames of platform '{Platform}' from {From} to {To} could not be analysed; they are left out.")]
    public static partial void SpanFailed(this ILogger log, string platform, string from, string to, Exception fault);

    [LoggerMessage(1302, LogLevel.Error, "{Input} (sequence number {Seq}) fails again and again; it is set aside.")]
    public static partial void InputSetAside(this ILogger log, string input, long seq);

    [LoggerMessage(1303, LogLevel.Error, "The analysis stalls, next try in {DelaySeconds:0.0} s; inputs are kept meanwhile. {Fault}")]
    public static partial void AnalysisStalled(this ILogger log, double delaySeconds, string fault, Exception exception);

    [LoggerMessage(1304, LogLevel.Warning, "The saved state of the herd cannot be used, so the whole history is folded again: {Fault}")]
    public static partial void CheckpointOutdated(this ILogger log, string fault);

    [LoggerMessage(1305, LogLevel.Warning, "The service's own figures could not be put into its series: {Fault}")]
    public static partial void FiguresNotTold(this ILogger log, string fault);

    [LoggerMessage(1400, LogLevel.Warning, "The retained topics could not be published: {Fault}")]
    public static partial void PublishingFailed(this ILogger log, string fault);
}
