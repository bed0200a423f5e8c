using GaitWatch.Simulator;

return await SimulatorCommand.RunAsync(args, Console.Out, Console.Error);
