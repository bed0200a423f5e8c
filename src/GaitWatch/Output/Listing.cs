using Spectre.Console;

namespace GaitWatch;

/// <summary>A table on the terminal that also reads well when piped: aligned columns, no frame, no colour there.</summary>
internal sealed class Listing
{
    // Piped, a row is never broken: what reads it decides.
    private const int PipedWidth = 4000;

    private readonly Table _table = new() { Border = TableBorder.None, ShowHeaders = true };

    /// <summary>Makes a table.</summary>
    /// <param name="columns">Its headings; a leading <c>&gt;</c> aligns the column right.</param>
    public Listing(params string[] columns)
    {
        foreach (var column in columns)
        {
            var right = column.StartsWith('>');
            var made = new TableColumn(new Text(right ? column[1..] : column, new Style(decoration: Decoration.Bold)));
            _table.AddColumn(right ? made.RightAligned() : made);
        }

        for (var i = 0; i < columns.Length; i++)
            _table.Columns[i].PadLeft(0).PadRight(i == columns.Length - 1 ? 0 : 2);
    }

    /// <summary>Adds a row of plain text.</summary>
    public void Add(params string[] cells) => _table.AddRow(cells.Select(cell => new Text(cell)));

    /// <summary>Writes the table.</summary>
    public void WriteTo(CommandContext context)
    {
        if (context.OutIsTerminal)
        {
            AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(context.Out), Interactive = InteractionSupport.No }).Write(_table);
            return;
        }

        using var plain = new StringWriter();
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(plain),
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        console.Profile.Width = PipedWidth;
        console.Write(_table);
        foreach (var line in plain.ToString().TrimEnd('\n', '\r').Split('\n'))
            context.Out.WriteLine(line.TrimEnd());
    }
}
