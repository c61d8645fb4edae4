using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Looks up what matters at a yard today.</summary>
public sealed class SeeToday(YardFile yard)
{
    /// <summary>The matters, in the order in which they are asked for.</summary>
    public IReadOnlyList<Matter> On(DateOnly today) => WhatMatters.Of(Facts(yard, yard.Pieces(onHandOnly: false), today));

    /// <summary>All that is known of it, with the pieces read before.</summary>
    public static TodayFacts Facts(YardFile yard, IReadOnlyList<Piece> pieces, DateOnly today)
    {
        var gone = yard.HandOvers();
        return new TodayFacts
        {
            Today = today,
            Settings = yard.Settings(),
            Pieces = pieces,
            Bins = yard.Bins(),
            Stages = yard.Stages(),
            Plans = yard.Plans(),
            Walls = yard.Walls(),
            Systems = new ChangeSystems(yard).All(),
            Stacked = yard.StackedCourses(),
            WallPlans = yard.WallPlans(),
            HandOvers = gone,
            Borrowed = Borrowed.In(yard, gone),
            Queue = yard.LabelQueue(),
            Entered = yard.Entered(FoamInTheSun.Asked(pieces)),
            Sheet = SheetOptions.For(yard, today),
            Last = yard.NextToUndo(),
            LastStands = yard.WhyNoUndo() is not null,
        };
    }
}
