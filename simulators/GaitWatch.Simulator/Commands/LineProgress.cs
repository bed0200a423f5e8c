using System.Globalization;

namespace GaitWatch.Simulator;

/// <summary>Progress as one line a tenth of the way.</summary>
internal sealed class LineProgress(TextWriter writer) : IProgress<BarnProgress>
{
    private int _tenth;

    public void Report(BarnProgress value)
    {
        var tenth = (int)(10 * value.Part);
        if (tenth <= _tenth)
            return;
        _tenth = tenth;
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{100 * value.Part,4:0} %  {value.At:yyyy-MM-dd}  {value.Sent} sent"));
    }
}
