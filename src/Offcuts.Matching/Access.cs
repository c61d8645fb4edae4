using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("Offcuts.Matching.Tests")]
