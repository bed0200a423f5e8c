using System.Globalization;
using System.Text.Json;
using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>Reads the payload of a <c>frames</c> message.</summary>
internal static class FrameReading
{
    /// <summary>No load cell under a cow reads more, offset included, kg either way.</summary>
    public const double LargestLoadKg = 5000;

    /// <summary>Slowest and fastest sampling that can be analysed, Hz.</summary>
    public const double LowestHz = 50, HighestHz = 1000;

    /// <summary>A frame is a stretch of a crossing, not a day's recording.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(1);

    // Far beyond what a device counts to in its life, and exact in a double.
    private const double LargestSeq = 1e15;

    private const string CellsRight = "an object with one list of samples for each load cell";

    /// <summary>Reads a frame of a platform; a fault when it cannot be used.</summary>
    public static Fault? Read(ref Utf8JsonReader json, TwinPlate platform, out Frame? frame)
    {
        frame = null;
        double? seq = null, hz = null;
        DateTimeOffset? t0 = null;
        float[][]? cells = null;
        while (Json.NextField(ref json, out var field, out var fault))
        {
            if (fault is not null)
                return fault;
            switch (field)
            {
                case "seq":
                    if (seq is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Number(ref json, field, 0, LargestSeq, "frames", out var counter)) is not null)
                        return fault;
                    if (counter != Math.Floor(counter))
                        return new(RejectionReasons.OutOfRange, $"seq is {Json.Found(ref json)}: a whole number, up by 1 a frame.");
                    seq = counter;
                    break;
                case "t0":
                    if (t0 is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Time(ref json, field, out var time)) is not null)
                        return fault;
                    t0 = time;
                    break;
                case "hz":
                    if (hz is not null)
                        return Json.Twice(field);
                    if (Json.Number(ref json, field, LowestHz, HighestHz, "Hz", out var rate) is { } bad)
                        return bad with { Reason = RejectionReasons.BadHz };
                    hz = rate;
                    break;
                case "cells":
                    if (cells is not null)
                        return Json.Twice(field);
                    if ((fault = ReadCells(ref json, platform, out cells)) is not null)
                        return fault;
                    break;
                default:
                    json.Skip();
                    break;
            }
        }

        if (seq is null)
            return Json.Missing("seq", "a whole number, up by 1 a frame");
        if (t0 is null)
            return Json.Missing("t0", "the time of the first sample");
        if (hz is null)
            return Json.Missing("hz", "the sampling rate");
        if (cells is null)
            return Json.Missing("cells", CellsRight);
        return Make((long)seq, t0.Value, hz.Value, cells, platform, out frame);
    }

    private static Fault? Make(long seq, DateTimeOffset t0, double hz, float[][] cells, TwinPlate platform, out Frame? frame)
    {
        frame = null;
        var absent = Array.FindIndex(cells, samples => samples is null);
        if (absent >= 0)
            return new(RejectionReasons.MissingCell, $"cells.{platform.Cells[absent].Id} is missing: a frame holds every load cell of '{platform.Id}'.");
        var count = cells[0].Length;
        for (var i = 1; i < cells.Length; i++)
        {
            if (cells[i].Length != count)
            {
                return new(
                    RejectionReasons.UnequalCells,
                    $"cells.{platform.Cells[i].Id} has {cells[i].Length} samples, cells.{platform.Cells[0].Id} has {count}: the same number for every load cell.");
            }
        }

        if (count == 0)
            return new(RejectionReasons.EmptyFrame, "cells hold no sample: at least one for each load cell.");
        if (count / hz > Longest.TotalSeconds)
        {
            var seconds = (count / hz).ToString("0.#", CultureInfo.InvariantCulture);
            return new(RejectionReasons.OutOfRange, $"cells hold {seconds} s: at most {Longest.TotalSeconds} s in a frame.");
        }

        frame = new Frame(seq, t0, hz, cells);
        return null;
    }

    private static Fault? ReadCells(ref Utf8JsonReader json, TwinPlate platform, out float[][] cells)
    {
        cells = new float[platform.Cells.Length][];
        if (json.TokenType != JsonTokenType.StartObject)
            return new(RejectionReasons.WrongType, $"cells is {Json.Found(ref json)}: {CellsRight}.");
        var expected = 64;
        while (Json.NextField(ref json, out var id, out var fault))
        {
            if (fault is not null)
                return fault;
            var at = IndexOf(platform, id);
            if (at < 0)
            {
                var known = string.Join(", ", platform.Cells.Select(cell => cell.Id));
                return new(RejectionReasons.UnknownCell, $"cells.{Shorten(id)} is no load cell of '{platform.Id}': it has {known}.");
            }

            if (cells[at] is not null)
                return Json.Twice($"cells.{id}");
            if ((fault = ReadSamples(ref json, id, expected, out cells[at])) is not null)
                return fault;
            expected = Math.Max(1, cells[at].Length);
        }

        return null;
    }

    private static Fault? ReadSamples(ref Utf8JsonReader json, string id, int expected, out float[] samples)
    {
        samples = [];
        if (json.TokenType != JsonTokenType.StartArray)
            return new(RejectionReasons.WrongType, $"cells.{id} is {Json.Found(ref json)}: a list of samples in kg.");
        var read = new float[expected];
        var count = 0;
        while (json.Read() && json.TokenType != JsonTokenType.EndArray)
        {
            // The field's name is made only for a fault: this is the hot loop.
            if (json.TokenType != JsonTokenType.Number || !json.TryGetDouble(out var load) || !(Math.Abs(load) <= LargestLoadKg))
                return Json.Number(ref json, $"cells.{id}[{count}]", -LargestLoadKg, LargestLoadKg, "kg", out _);
            if (count == read.Length)
                Array.Resize(ref read, 2 * count);
            read[count++] = (float)load;
        }

        if (count != read.Length)
            Array.Resize(ref read, count);
        samples = read;
        return null;
    }

    private static int IndexOf(TwinPlate platform, string id)
    {
        for (var i = 0; i < platform.Cells.Length; i++)
        {
            if (platform.Cells[i].Id == id)
                return i;
        }

        return -1;
    }

    private static string Shorten(string text) => text.Length > 24 ? text[..24] + "…" : text;
}
