using GaitWatch.Benchmarks;

var accuracy = new AccuracyOptions();
if (args is ["accuracy", _, ..])
{
    var (options, fault) = AccuracyOptions.Parse(args.AsSpan(1));
    if (options is null)
    {
        Console.Error.WriteLine(fault);
        return 2;
    }

    (accuracy, args) = (options, ["accuracy"]);
}

Dictionary<string, (string What, Func<Task> Run)> benchmarks = new()
{
    ["crossing"] = ("one crossing of four seconds, from frames to the load of each leg, beside a fixed piece of work", CrossingBenchmark.RunAsync),
    ["ingest"] = ("passages a second from Mosquitto into the durable store, beside a bare client's", IngestBenchmark.RunAsync),
    ["replay"] = ("a year of 300 cows through 'gaitwatch replay'", ReplayBenchmark.RunAsync),
    ["accuracy"] = ("how near the figures of simulated crossings come to the truth, beside a plain numpy reference", () => AccuracyBenchmark.RunAsync(accuracy)),
    ["memory"] = ("what the service holds over a year's store while frames come and pages are read", MemoryBenchmark.RunAsync),
};

if (args.Length != 1 || (args[0] != "all" && !benchmarks.ContainsKey(args[0])))
{
    Console.Error.WriteLine("Which benchmark? One of:");
    foreach (var (name, (what, _)) in benchmarks)
        Console.Error.WriteLine($"  {name,-10}{what}");
    Console.Error.WriteLine("  all       every one of them");
    Console.Error.WriteLine("accuracy takes --steady N, --varied N, --edges N, --platforms N, --bad N, --queue N, --seed N and --no-reference.");
    return 2;
}

Surroundings.Write();
foreach (var (name, (what, run)) in benchmarks.Where(one => args[0] is "all" || args[0] == one.Key))
{
    Console.WriteLine($"\n{name}: {what}\n");
    await run();
}

return 0;
