using System.Text;
using GaitWatch;

if (!Console.IsOutputRedirected || !OperatingSystem.IsWindows())
    Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await CommandLine.RunAsync(args, CommandContext.OfProcess());
