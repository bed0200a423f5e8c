using GaitWatch.Benchmarks;

Dictionary<string, (string What, Func<Task> Run)> benchmarks = new()
{
    ["crossing"] = ("one crossing of four seconds, from frames to the load of each leg, beside a fixed piece of work", CrossingBenchmark.RunAsync),
    ["fold"] = ("what one passage costs to fold and one cow to keep, beside a logarithm", FoldBenchmark.RunAsync),
    ["ingest"] = ("passages a second from Mosquitto into the durable store, beside a bare client's", IngestBenchmark.RunAsync),
    ["replay"] = ("a year of 300 cows through 'gaitwatch replay'", ReplayBenchmark.RunAsync),
    ["influx"] = ("points a second through the outbox into a real influxd, beside the bare client's", InfluxBenchmark.RunAsync),
    ["web"] = ("first byte, weight and a year's charts on screen of the pages, on a year of 300 cows", WebBenchmark.RunAsync),
    ["list"] = ("the trimmer's list over 5,000 cows with five years of history, from the store", ListBenchmark.RunAsync),
    ["memory"] = ("what the service holds over a year's store while frames come and pages are read", MemoryBenchmark.RunAsync),
};

if (args is ["detection", .. var asked])
{
    try
    {
        Surroundings.Write();
        Console.WriteLine();
        await DetectionBenchmark.RunAsync(asked);
        return 0;
    }
    catch (FormatException fault)
    {
        Console.Error.WriteLine(fault.Message);
        return 2;
    }
}

if (args is ["accuracy", .. var counts])
{
    var (options, fault) = AccuracyOptions.Parse(counts);
    if (options is null)
    {
        Console.Error.WriteLine(fault);
        return 2;
    }

    Surroundings.Write();
    Console.WriteLine();
    await AccuracyBenchmark.RunAsync(options);
    return 0;
}

if (args.Length != 1 || (args[0] != "all" && !benchmarks.ContainsKey(args[0])))
{
    Console.Error.WriteLine("Which benchmark? One of:");
    foreach (var (name, (what, _)) in benchmarks)
        Console.Error.WriteLine($"  {name,-10}{what}");
    Console.Error.WriteLine("  all       every one of them");
    Console.Error.WriteLine("  accuracy  how near the figures of simulated crossings come to the truth, beside a numpy reference: --steady N, --varied N, --edges N, --platforms N, --zeros N, --bad N, --queue N, --reference N, --seed N");
    Console.Error.WriteLine($"  detection the detection report on simulated herds: {DetectionArguments.Usage}");
    return 2;
}

Surroundings.Write();
foreach (var (name, (what, run)) in benchmarks.Where(one => args[0] is "all" || args[0] == one.Key))
{
    Console.WriteLine($"\n{name}: {what}\n");
    await run();
}

return 0;
