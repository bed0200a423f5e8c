using System.Threading.Channels;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Acknowledges the messages of one connection in the order in which they came (MQTT 5.0, 4.6: acknowledgements go out in
/// the order of arrival), each after it is durable.
/// </summary>
internal sealed class AckQueue
{
    private readonly Channel<(Task Durable, Func<Task> Acknowledge)> _queue =
        Channel.CreateUnbounded<(Task, Func<Task>)>(new() { SingleReader = true });

    private readonly ILogger _log;

    public AckQueue(ILogger log)
    {
        _log = log;
        Done = RunAsync();
    }

    /// <summary>Ends when the connection has ended and nothing more will be acknowledged.</summary>
    public Task Done { get; }

    /// <summary>Acknowledges when durable and all earlier ones are acknowledged.</summary>
    public void Add(Task durable, Func<Task> acknowledge) => _queue.Writer.TryWrite((durable, acknowledge));

    /// <summary>The connection has ended: what is not acknowledged by now comes again with the next.</summary>
    public void Close() => _queue.Writer.TryComplete();

    private async Task RunAsync()
    {
        await foreach (var (durable, acknowledge) in _queue.Reader.ReadAllAsync())
        {
            try
            {
                await durable;
                await acknowledge();
            }
            catch (IntakeClosedException)
            {
                // Not durable: nothing after it may be acknowledged either, or the order would break.
                return;
            }
            catch (Exception fault)
            {
                // The connection has gone; the client library then throws what it happens to meet, NullReferenceException
                // included. The broker sends the message again and it is found to be there already.
                _log.AcknowledgementLost(fault.GetType().Name);
                return;
            }
        }
    }
}
