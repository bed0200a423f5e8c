using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Takes and judges a check of a platform with a test weight. The verdict is kept with what was read, as the platform was set up then.</summary>
internal sealed class RecordCalibration(BarnStore store) : WriteRoute(HttpMethods.Post, "/api/platforms/{id}/calibrations", "application/json", 64 * 1024)
{
    private const int MostPlaces = 40;
    private const double HeaviestWeightKg = 5_000;

    // Less than twenty intervals tells of the interval, not of the platform (OIML R 76-1 asks for a minimum capacity of 20 e in class III; from memory).
    private const double LeastIntervals = 20;

    // A reading no cell under a cattle platform gives.
    private const double MostCellKg = 20_000;

    public override Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return Task.FromResult(WriteDecision.Refuse(refused));
        var id = request.Name("id");
        if (store.Options.Platforms.FirstOrDefault(platform => platform.Id == id) is not { } platform)
            return Task.FromResult(WriteDecision.Refuse(PlatformRoutes.Unknown(id, store.Options.Platforms)));

        var at = request.At(fields);
        var by = fields.Text("by", CloseAlert.LongestBy);
        if (string.IsNullOrWhiteSpace(by))
            fields.Faults.AddNew([("by", "by is missing: who did the check is part of its record.")]);
        var note = fields.Text("note", CloseAlert.LongestNote) ?? "";
        var weight = Weight(fields, platform);
        var before = Readings(fields.Object("emptyBefore"), "emptyBefore", fields.Faults, platform);
        var after = Readings(fields.Object("emptyAfter"), "emptyAfter", fields.Faults, platform);
        var places = Places(fields, platform);
        if (before?.At > after?.At)
            fields.Faults.Add("emptyAfter.at", "emptyAfter.at is before emptyBefore.at: the plates are read empty first and last.");
        if (fields.Faults.Any)
            return Task.FromResult(WriteDecision.Refuse(Refusal.Invalid(fields.Faults)));
        var write = new CalibrationWrite(at, PlatformCalibration.Judge(platform, new TestWeightTrial(weight, before!, places, after!)), by!, note);
        return Task.FromResult(WriteDecision.Take([write], write));
    }

    private static double Weight(JsonFields fields, TwinPlate platform)
    {
        var least = LeastIntervals * platform.VerificationIntervalKg;
        if (fields.Figure("weightKg") is not { } weight)
        {
            fields.Faults.AddNew([("weightKg", "weightKg is missing: the test weight in kilograms.")]);
            return 0;
        }

        if (weight < least || weight > HeaviestWeightKg)
            fields.Faults.Add("weightKg", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"weightKg is {weight}: from {least} kg (20 intervals of this platform) to {HeaviestWeightKg} kg."));
        return weight;
    }

    private static ImmutableArray<PlacedReadings> Places(JsonFields fields, TwinPlate platform)
    {
        var places = ImmutableArray.CreateBuilder<PlacedReadings>();
        var told = fields.Objects("places", MostPlaces);
        if (told is null or [])
            fields.Faults.AddNew([("places", "places is missing or empty: what the cells read with the weight over each of them, such as [{ \"cell\": \"l0\", \"at\": \"…\", \"cells\": { \"l0\": 92.1 } }].")]);
        foreach (var place in told ?? [])
        {
            var cell = place.Text("cell", 100);
            if (platform.Cells.All(known => known.Id != cell))
                fields.Faults.AddNew([(place.Path("cell"), $"{place.Path("cell")} is {(cell is null ? "missing" : $"'{cell}'")}: one of {string.Join(", ", platform.Cells.Select(known => known.Id))}.")]);
            if (Readings(place, place.Path("")[..^1], fields.Faults, platform) is { } readings && cell is not null)
                places.Add(new PlacedReadings(cell, readings));
        }

        return places.ToImmutable();
    }

    private static CellReadings? Readings(JsonFields? told, string name, Faults faults, TwinPlate platform)
    {
        if (told is null)
        {
            faults.AddNew([(name, $"{name} is missing: {{ \"at\": \"…\", \"cells\": {{ … }} }} with one reading a cell.")]);
            return null;
        }

        var at = told.Instant("at");
        if (at is null)
            faults.AddNew([(told.Path("at"), $"{told.Path("at")} is missing: when it was read.")]);
        var cells = told.Object("cells");
        if (cells is null)
            faults.AddNew([(told.Path("cells"), $"{told.Path("cells")} is missing: one reading a cell, kg.")]);
        var kg = ImmutableArray.CreateBuilder<double>(platform.Cells.Length);
        foreach (var cell in platform.Cells)
        {
            if (cells?.Figure(cell.Id) is { } reading && Math.Abs(reading) <= MostCellKg)
                kg.Add(reading);
            else if (cells is not null)
                faults.AddNew([(cells.Path(cell.Id), $"{cells.Path(cell.Id)} is missing or no reading of a cell: a number of kilograms.")]);
        }

        return at is { } when && kg.Count == platform.Cells.Length ? new CellReadings(when, kg.MoveToImmutable()) : null;
    }
}
