namespace GaitWatch.Acceptance;

/// <summary>One command of the program, run to its end as a process.</summary>
internal static class CommandRun
{
    public static async Task<(int Code, string Said)> OfAsync(string folder, params IEnumerable<string> arguments)
    {
        await using var process = ChildProcess.Start("dotnet", [Programs.GaitWatch, .. arguments], folder);
        process.Input.Close();
        var code = await process.ExitAsync(TimeSpan.FromMinutes(8));
        return (code, process.Said);
    }
}
