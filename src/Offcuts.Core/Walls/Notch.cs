using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>
/// Where an opening takes only a part of a course's height: the pieces run on through there, cut to the heights that are left.
/// </summary>
/// <param name="Leg">The leg.</param>
/// <param name="Course">Number of the course, from 1 at the bottom.</param>
/// <param name="Opening">Which opening.</param>
/// <param name="Where">From edge to edge, along the axis of the leg's runs.</param>
/// <param name="Below">What is left of the course under the opening; zero where nothing is.</param>
/// <param name="Above">What is left of the course over the opening; zero where nothing is.</param>
public sealed record Notch(string Leg, int Course, string Opening, Span Where, Length Below, Length Above);
