using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsvHelper;
using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>A register read from a file.</summary>
/// <param name="Rows">The good rows, each with the line it begins on.</param>
/// <param name="Rejected">What is wrong with the others.</param>
/// <param name="Notices">What is worth knowing.</param>
internal sealed record HerdCsvContent(
    ImmutableArray<(int Line, CowRegistration Registration)> Rows, ImmutableArray<RejectedRow> Rejected, ImmutableArray<string> Notices);

/// <summary>
/// Reads a herd register from CSV (RFC 4180): a header line that names the columns in any order, then a row a cow. Spreadsheets
/// in much of Europe part columns by semicolons; that is seen from the header and said.
/// </summary>
internal sealed class HerdCsv
{
    private static readonly ImmutableArray<string> Required = ["cow", "eid", "pen", "parity", "calvedOn"];
    private static readonly ImmutableArray<string> Optional = ["driedOffOn", "dueOn", "leftOn", "from"];

    private readonly FarmCalendar _calendar;
    private readonly DateTimeOffset _at;
    private readonly ImmutableArray<(int, CowRegistration)>.Builder _rows = ImmutableArray.CreateBuilder<(int, CowRegistration)>();
    private readonly ImmutableArray<RejectedRow>.Builder _rejected = ImmutableArray.CreateBuilder<RejectedRow>();
    private readonly ImmutableArray<string>.Builder _notices = ImmutableArray.CreateBuilder<string>();
    private readonly Dictionary<string, int> _columns = new(StringComparer.OrdinalIgnoreCase);
    private int _width;

    private HerdCsv(FarmCalendar calendar, DateTimeOffset at)
    {
        _calendar = calendar;
        _at = at;
    }

    /// <summary>Reads a file.</summary>
    /// <param name="file">Its bytes, UTF-8 with or without byte order mark.</param>
    /// <param name="calendar">The farm's days: a date in <c>from</c> means its midnight.</param>
    /// <param name="at">When it was entered: what <c>from</c> is where a row does not say.</param>
    public static HerdCsvContent Read(ReadOnlySpan<byte> file, FarmCalendar calendar, DateTimeOffset at)
    {
        var reader = new HerdCsv(calendar, at);
        reader.Read(file);
        reader.RefuseDoubles();
        return new(
            reader._rows.ToImmutable(), [.. reader._rejected.OrderBy(row => row.Line)], reader._notices.ToImmutable());
    }

    private void Read(ReadOnlySpan<byte> file)
    {
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(file).TrimStart('\uFEFF');
        }
        catch (ArgumentException)
        {
            _rejected.Add(new(1, "file", "The file is not UTF-8 text: save it as \"CSV UTF-8\"."));
            return;
        }

        var options = CsvReaderOptions.Default with
        {
            Separator = Separator(text),
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Skip,
            OnMalformedRecord = record => _rejected.Add(new((int)record.LineNumber, "row", Fault(record.Reason))),
        };
        using var csv = CsvReader.Create(new StringReader(text), options);
        var hasHeader = false;
        while (csv.Read() && (hasHeader || _rejected.Count == 0))
        {
            var fields = new string[csv.FieldCount];
            for (var i = 0; i < fields.Length; i++)
                fields[i] = csv[i].ToString();
            if (fields.All(string.IsNullOrEmpty))
                continue;
            if (hasHeader)
                ReadRow(fields, (int)csv.LineNumber);
            else if (ReadHeader(fields, (int)csv.LineNumber))
                hasHeader = true;
            else
                return;
        }

        if (!hasHeader && _rejected.Count == 0)
            _rejected.Add(new(1, "file", $"The file is empty: a first line with the columns {string.Join(',', Required)} is needed, then a line a cow."));
    }

    private static string Fault(CsvMalformedReason reason) => reason == CsvMalformedReason.UnterminatedQuote
        ? "A quote that opens a field is never closed, so that the rest of the file is in it: close it, or double a quote that is part of the text (RFC 4180)."
        : "A quote stands where none may: a field with quotes is put in quotes itself, and each quote in it doubled (RFC 4180).";

    private char Separator(string text)
    {
        var end = text.IndexOf('\n', StringComparison.Ordinal);
        var header = end < 0 ? text : text[..end];
        if (header.Contains(',', StringComparison.Ordinal))
            return ',';
        if (header.Contains(';', StringComparison.Ordinal))
        {
            _notices.Add("Columns are parted by semicolons; read so.");
            return ';';
        }

        if (header.Contains('\t', StringComparison.Ordinal))
        {
            _notices.Add("Columns are parted by tabs; read so.");
            return '\t';
        }

        return ',';
    }

    private bool ReadHeader(string[] fields, int line)
    {
        _width = fields.Length;
        var good = true;
        for (var i = 0; i < fields.Length; i++)
        {
            var name = fields[i];
            if (!Required.Concat(Optional).Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                if (name.Length > 0)
                    _notices.Add($"Column '{Shorten(name)}' is ignored: it is not part of the register.");
            }
            else if (!_columns.TryAdd(name, i))
            {
                _rejected.Add(new(line, name, $"Column '{name}' stands twice in the header: once is needed."));
                good = false;
            }
        }

        foreach (var missing in Required.Where(name => !_columns.ContainsKey(name)))
        {
            _rejected.Add(new(line, missing, $"Column '{missing}' is missing from the header: {string.Join(',', Required)} are needed, in any order; a field may be empty."));
            good = false;
        }

        return good;
    }

    private void ReadRow(string[] fields, int line)
    {
        var faults = new List<RejectedRow>();
        if (fields.Length < _width || fields.Skip(_width).Any(field => field.Length > 0))
        {
            _rejected.Add(new(line, "row", $"The row has {fields.Length} fields, the header {_width}: the same number is needed."));
            return;
        }

        var cow = Field(fields, "cow") ?? "";
        Eid? eid = null;
        if (Field(fields, "eid") is { } digits)
        {
            if (Eid.TryParse(digits, out var read, out var fault))
                eid = read;
            else
                faults.Add(new(line, "eid", fault));
        }

        int? parity = null;
        if (Field(fields, "parity") is { } number)
        {
            if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var read))
                parity = read;
            else
                faults.Add(new(line, "parity", $"parity is '{Shorten(number)}': a whole number of calvings is needed, or nothing."));
        }

        var registration = new CowRegistration(cow, From(fields, line, faults))
        {
            Eid = eid,
            Pen = Field(fields, "pen"),
            Parity = parity,
            CalvedOn = Day(fields, "calvedOn", line, faults),
            DriedOffOn = Day(fields, "driedOffOn", line, faults),
            DueOn = Day(fields, "dueOn", line, faults),
            LeftOn = Day(fields, "leftOn", line, faults),
            EnteredAt = _at,
        };
        faults.AddRange(HerdRegisterFaults.Of(registration).Select(fault => new RejectedRow(line, fault.Field, fault.Fault)));
        if (faults.Count == 0)
            _rows.Add((line, registration));
        _rejected.AddRange(faults);
    }

    // What each row says may be right and still contradict another: then the later row is the one refused.
    private void RefuseDoubles()
    {
        var kept = ImmutableArray.CreateBuilder<(int, CowRegistration)>();
        var cows = new Dictionary<(string, DateTimeOffset), int>();
        var tags = new Dictionary<Eid, (string Cow, int Line)>();
        foreach (var (line, row) in _rows)
        {
            if (cows.TryGetValue((row.Cow, row.From), out var earlier))
                _rejected.Add(new(line, "cow", $"cow is '{row.Cow}', which stands on line {earlier} already: once a cow, or each with its own from."));
            else if (row.Eid is { } eid && tags.TryGetValue(eid, out var wearer) && wearer.Cow != row.Cow)
                _rejected.Add(new(line, "eid", $"eid is '{eid}', which cow '{wearer.Cow}' has on line {wearer.Line} already: a tag names one cow."));
            else
            {
                cows[(row.Cow, row.From)] = line;
                if (row.Eid is { } worn)
                    tags.TryAdd(worn, (row.Cow, line));
                kept.Add((line, row));
            }
        }

        _rows.Clear();
        _rows.AddRange(kept);
    }

    private DateTimeOffset From(string[] fields, int line, List<RejectedRow> faults)
    {
        if (Field(fields, "from") is not { } text)
            return _at;
        if (Days.TryParse(text, out var day))
            return _calendar.StartOf(day);
        if (Instants.TryParse(text, out var instant))
            return instant;
        faults.Add(new(line, "from", $"from is '{Shorten(text)}': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed, or nothing."));
        return _at;
    }

    private DateOnly? Day(string[] fields, string name, int line, List<RejectedRow> faults)
    {
        if (Field(fields, name) is not { } text)
            return null;
        if (Days.TryParse(text, out var day))
            return day;
        faults.Add(new(line, name, $"{name} is '{Shorten(text)}': a date such as 2026-03-02 is needed, or nothing."));
        return null;
    }

    private string? Field(string[] fields, string name) =>
        _columns.TryGetValue(name, out var column) && fields[column].Length > 0 ? fields[column] : null;

    private static string Shorten(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
