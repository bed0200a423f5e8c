using NWaves.Filters.Base;
using NWaves.Filters.Base64;
using NWaves.Filters.Butterworth;

namespace GaitWatch.Gait;

/// <summary>A Butterworth low-pass run over a signal forwards and backwards, so that nothing is delayed.</summary>
/// <remarks>
/// Second order each way, the usual choice for ground reaction forces. Two passes halve the power at the nominal cut-off
/// twice, so each pass is designed higher for the cut-off of both together to be the one meant: by the factor
/// (sqrt 2 - 1)^(-1/4) = 1.2465 (Winter D.A. 2009, Biomechanics and Motor Control of Human Movement, 4th ed., section 3.4.4.2).
/// </remarks>
internal sealed class LowPass
{
    /// <summary>
    /// Half-power frequency of both passes together, Hz. A residual analysis of walks over a rigid plate (tests:
    /// <c>LowPassResidualTests</c>) asks for no less than the contacts' edges need, 15 to 20 Hz; but plates ring from 12 Hz up, which
    /// harms more than a rounded edge, so the cut-off lies below that. A footfall lasts about a second and its curve has two peaks at
    /// most (Scott 1988): at 10 Hz its peak loses less than 0.3 %.
    /// </summary>
    public const double CutOffHz = 10;

    /// <summary>Order of each pass.</summary>
    public const int Order = 2;

    private readonly TransferFunction? _transfer;

    /// <param name="hz">Sampling rate, Hz.</param>
    /// <param name="cutOffHz">Half-power frequency of both passes together, Hz.</param>
    public LowPass(double hz, double cutOffHz = CutOffHz)
    {
        var fraction = PassHz(cutOffHz) / hz;
        // Near half the sampling rate there is nothing left to take away.
        if (fraction < 0.45)
            _transfer = new LowPassFilter(fraction, Order).Tf;
    }

    /// <summary>The cut-off of one pass for that of both.</summary>
    public static double PassHz(double cutOffHz) => cutOffHz / Math.Pow(Math.Sqrt(2) - 1, 0.25);

    /// <summary>The signal smoothed; a new array.</summary>
    public double[] Apply(double[] signal)
    {
        var padding = 3 * (Order + 1);
        if (_transfer is null || signal.Length <= padding)
            return (double[])signal.Clone();
        return new ZiFilter64(_transfer).ZeroPhase(signal, padding);
    }
}
