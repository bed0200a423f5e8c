using System.Globalization;
using System.Text;

namespace GaitWatch.Web;

/// <summary>Builds the path of an SVG shape, a tenth of a unit fine, in the fewest characters.</summary>
internal sealed class SvgPath
{
    private readonly StringBuilder _text = new();

    public SvgPath Move(double x, double y) => Add('M', x, y);

    public SvgPath Line(double x, double y) => Add('L', x, y);

    /// <summary>A point: with round line ends it is a dot.</summary>
    public SvgPath Dot(double x, double y)
    {
        Add('M', x, y)._text.Append("h0");
        return this;
    }

    public SvgPath Bar(double x, double bottom, double top)
    {
        Add('M', x, bottom)._text.Append('V').Append(Number(top));
        return this;
    }

    public SvgPath Close()
    {
        _text.Append('Z');
        return this;
    }

    public override string ToString() => _text.ToString();

    public static string Number(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);

    private SvgPath Add(char command, double x, double y)
    {
        _text.Append(command).Append(Number(x)).Append(' ').Append(Number(y));
        return this;
    }
}
