using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Imports the register from a file: whole, or where asked, the good rows of it.</summary>
internal sealed class ImportHerd(BarnStore store) : WriteRoute(HttpMethods.Post, "/api/herd", "text/csv", 8 * 1024 * 1024)
{
    public override Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation) => Task.FromResult(Decide(request));

    private WriteDecision Decide(WriteRequest request)
    {
        var query = new QueryReader(store.Options.Calendar);
        var partial = query.Flag("partial", request.Query["partial"]);
        var at = ArrivalTime.Of(query.Instant("at", request.Query["at"]), request.ArrivedAt, query.Faults);
        if (query.Faults.Any)
            return WriteDecision.Refuse(query.Refusal);

        var content = HerdCsv.Read(request.Body.Span, store.Options.Calendar, at);
        if (content.Rejected.IsEmpty || (partial && !content.Rows.IsEmpty))
        {
            ImmutableArray<FarmWrite> writes = [.. content.Rows.Select(row => new RegisterWrite(at, row.Registration))];
            return WriteDecision.Take(writes, new HerdImportView(writes.Length, content.Rejected, content.Notices));
        }

        var faults = new Faults();
        foreach (var row in content.Rejected)
            faults.Add($"line {row.Line}, {row.Field}", row.Fault);
        return WriteDecision.Refuse(Refusal.Invalid(faults), new HerdImportView(0, content.Rejected, content.Notices));
    }
}
