using System.CommandLine;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>finding</c>: what was found in a foot and done to it.</summary>
internal static class FindingCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var cow = new Argument<string>("COW") { Description = "The cow's number, or the 15 digits of her tag." };
        var foot = Word("--foot", "lf, rf, lh or rh: left fore, right fore, left hind, right hind.", required: true);
        var lesion = Word("--lesion", "An ICAR code such as SU, WLF or DD, or foreign-body, other, none.", required: true);
        var claw = Word("--claw", "inner, outer or both; not for a lesion of the skin.");
        var zone = new Option<int?>("--zone") { Description = "Place on the claw map, 0 to 12." };
        var severity = new Option<int?>("--severity") { Description = "1 mild, 2 moderate, 3 severe; not for DD." };
        var mStage = Word("--m-stage", "Stage of DD: M0 M1 M2 M3 M4 M4.1.");
        var sign = Several("--sign", "A sign that asks for the veterinarian, such as no-weight-on-leg; may be repeated.");
        var action = Several("--action", "What was done, such as trimmed, wrap, wrap-off, block, block-off; may be repeated.");
        var blockClaw = Word("--block-claw", "The claw that carries the block, inner or outer: the sound one.");
        var blockMaterial = Word("--block-material", "What the block is made of.");
        var foreignBody = Word("--foreign-body", "The body found, such as stone.");
        var size = new Option<double?>("--size-mm") { Description = "Its largest length, millimetres; with --foreign-body." };
        var withdrawal = CommonOptions.Day("--withdrawal-until", "The withdrawal date that the veterinarian gave; none is computed here.");
        var score = new Option<int?>("--locomotion-score") { Description = "How she walked, 1 (sound) to 5 (hardly able to walk)." };
        var by = Word("--by", "Who found it.");
        var note = Word("--note", "What else is to be said.");
        var at = CommonOptions.Instant("--at", "When the foot was in hand. Default: now.");
        var id = Word("--id", "A name of your own for it: sent twice it counts once. Default: a new one.");
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("finding", "Records what was found in a foot and done to it. Warns of what is unsafe; it does not diagnose.")
        {
            Examples =
            [
                ("gaitwatch finding 417 --foot rh --lesion SU --claw outer --zone 4 --severity 2 --action trimmed --action block --block-claw inner", "a sole ulcer, blocked"),
                ("gaitwatch finding 417 --foot rh --lesion SU --action block-off", "its block comes off"),
                ("gaitwatch finding 417 --foot lh --lesion none", "lifted, nothing found"),
            ],
        };
        verb.Add(cow);
        foreach (var option in (Option[])[foot, lesion, claw, zone, severity, mStage, sign, action, blockClaw, blockMaterial, foreignBody, size, withdrawal, score, by, note, at, id, json, url])
            verb.Add(option);
        verb.Validators.Add(result =>
        {
            if (result.GetResult(size) is not null && result.GetResult(foreignBody) is null)
                result.AddError("--size-mm goes with --foreign-body KIND.");
        });
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: true, cancellation);
            var form = new FindingForm
            {
                Id = parsed.GetValue(id) ?? Guid.CreateVersion7(context.Time.GetUtcNow()).ToString(),
                At = parsed.GetValue(at) ?? context.Time.GetUtcNow(),
                Foot = parsed.GetValue(foot),
                Claw = parsed.GetValue(claw),
                Zone = parsed.GetValue(zone),
                Lesion = parsed.GetValue(lesion),
                Severity = parsed.GetValue(severity),
                MStage = parsed.GetValue(mStage),
                Signs = parsed.GetValue(sign) ?? [],
                Actions = parsed.GetValue(action) ?? [],
                BlockClaw = parsed.GetValue(blockClaw),
                BlockMaterial = parsed.GetValue(blockMaterial),
                ForeignBody = parsed.GetValue(foreignBody) is { } kind ? new ForeignBodyForm(kind, parsed.GetValue(size)) : null,
                WithdrawalUntil = parsed.GetValue(withdrawal),
                LocomotionScore = parsed.GetValue(score),
                By = parsed.GetValue(by) ?? "",
                Note = parsed.GetValue(note) ?? "",
            };
            var route = $"api/cows/{Uri.EscapeDataString(parsed.GetRequiredValue(cow))}/findings";
            var answer = await service.Api.WriteAsync(HttpMethod.Post, route, form, cancellation);
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(answer);
            else if (!WriteAnswer.TellStored(context, answer))
                Write(context, ApiClient.Read<FindingView>(answer, route), service.Zone);
            return ExitCode.Done;
        });
        return verb;
    }

    private static void Write(CommandContext context, FindingView kept, TimeZoneInfo zone)
    {
        var finding = FindingReader.Read(kept).Finding;
        context.Out.WriteLine($"Kept as {kept.Id}: cow {kept.Cow}, {Words.Minute(kept.At, zone)}, {Words.Leg(kept.Foot)}: {finding?.InWords() ?? kept.Lesion}");
        foreach (var warning in kept.Warnings)
            context.Error.WriteLine($"Warning: {warning.Sentence}");
        context.Out.WriteLine();
        context.Out.WriteLine(Words.CallTheVeterinarian);
    }

    private static Option<string?> Word(string name, string description, bool required = false) => new(name) { Description = description, Required = required };

    private static Option<string[]?> Several(string name, string description) => new(name) { Description = description };
}
