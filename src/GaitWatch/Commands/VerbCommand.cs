using System.CommandLine;

namespace GaitWatch;

/// <summary>A verb of the command line, with the examples its help shows.</summary>
internal sealed class VerbCommand(string name, string description) : Command(name, description)
{
    /// <summary>Examples: what to type, and what it does.</summary>
    public required IReadOnlyList<(string Line, string What)> Examples { get; init; }
}
