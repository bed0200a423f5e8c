using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("GaitWatch.Web.Tests")]
