namespace GaitWatch.Tests;

/// <summary>Runs a command as a piped terminal would, inside the test.</summary>
internal static class Terminal
{
    public static Task<(int Code, string Out, string Error)> RunAsync(params string[] arguments) => RunWithAsync(Stream.Null, arguments);

    public static async Task<(int Code, string Out, string Error)> RunWithAsync(Stream input, params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var context = new CommandContext { Out = output, Error = error, In = () => input };
        var code = await CommandLine.RunAsync(arguments, context);
        return (code, output.ToString(), error.ToString());
    }
}
