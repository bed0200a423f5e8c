using GaitWatch.Store;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Makes what waits in the <see cref="Intake"/> durable, as much at a time as has gathered while the last commit ran. A
/// sender hears of it only after the commit.
/// </summary>
/// <remarks>
/// While the store cannot write, the batch is kept and tried again and nothing is acknowledged; the intake fills to its
/// bound and senders wait. When the service stops, what can be made durable in one more try is; the rest is refused and its
/// senders send it again.
/// </remarks>
internal sealed class GroupCommit : BackgroundService
{
    private readonly Intake _intake;
    private readonly IInbox _inbox;
    private readonly BarnMetrics _metrics;
    private readonly TimeProvider _time;
    private readonly ILogger<GroupCommit> _log;
    private readonly int _most;
    private readonly Backoff _backoff;

    /// <summary>Makes the loop; it runs when the host starts it.</summary>
    public GroupCommit(Intake intake, IInbox inbox, BarnOptions options, BarnMetrics metrics, TimeProvider time, ILogger<GroupCommit> log)
    {
        _intake = intake;
        _inbox = inbox;
        _metrics = metrics;
        _time = time;
        _log = log;
        _most = options.MostPerCommit;
        _backoff = new Backoff(TimeSpan.FromSeconds(0.5), TimeSpan.FromSeconds(30), Random.Shared.NextDouble);
    }

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        _intake.Close();
        await base.StopAsync(cancellationToken);
        // Stopped before it ever ran, the loop leaves behind what was offered meanwhile.
        if (ExecuteTask is { IsCompleted: true })
            await ExecuteAsync(new CancellationToken(canceled: true));
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var batch = new List<Intake.Waiting>();
        // Not the stopping token: stopping closes the intake, and what has gathered by then is still taken.
        while (await _intake.UntilOfferedAsync(CancellationToken.None))
        {
            _intake.Drain(batch, _most);
            if (await CommitAsync([.. batch.Select(one => one.Input)], stoppingToken))
                _intake.Complete(batch);
            else
                _intake.Refuse(batch);
        }
    }

    /// <summary>Tries until the batch is durable; false when the service stops before that.</summary>
    private async Task<bool> CommitAsync(Input[] inputs, CancellationToken stopping)
    {
        while (true)
        {
            try
            {
                await AppendAsync(inputs);
                if (_backoff.Failures > 0)
                    _log.StoreBack(_backoff.Failures);
                _backoff.Reset();
                return true;
            }
            catch (StoreUnavailableException fault)
            {
                var delay = _backoff.Next();
                _log.StoreCannotWrite(inputs.Length, delay.TotalSeconds, fault.Message);
                try
                {
                    await Task.Delay(delay, _time, stopping);
                }
                catch (OperationCanceledException)
                {
                    return false;
                }
            }
            catch (Exception fault) when (inputs.Length > 1)
            {
                // A defect that one input of the batch meets must not hold up the others: find it by halves.
                _log.BatchFailed(inputs.Length, fault);
                return await CommitAsync(inputs[..(inputs.Length / 2)], stopping) && await CommitAsync(inputs[(inputs.Length / 2)..], stopping);
            }
            catch (Exception fault) when (inputs[0] is not RejectedInput)
            {
                _log.InputNotStorable(inputs[0].GetType().Name, fault);
                inputs = [SetAside(inputs[0], fault)];
            }
            catch (Exception fault)
            {
                // Not even its rejection can be kept. Nothing is acknowledged: its sender will bring it again.
                _log.InputNotStorable(inputs[0].GetType().Name, fault);
                return false;
            }
        }
    }

    private async Task AppendAsync(Input[] inputs)
    {
        var begun = _time.GetTimestamp();
        // A commit under way is finished even when the service stops.
        var result = await _inbox.AppendAsync(inputs, CancellationToken.None);
        _metrics.Committed(result, _time.GetElapsedTime(begun));
    }

    private static RejectedInput SetAside(Input input, Exception fault) => new(
        input.Describe(), RejectionReasons.NotStorable, $"The store refused it ({fault.GetType().Name}): a defect of GaitWatch, please report it.", []);
}
