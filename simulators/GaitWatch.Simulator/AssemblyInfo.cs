using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("GaitWatch.Simulator.Tests")]
