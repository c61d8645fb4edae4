using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The questions of the place of the walls.</summary>
internal static class WallsAsks
{
    public static Ask Sheet(string wall) =>
        new Ask.Write($"Which PDF file is the sheet of {wall} written to? Its rows to scale, what goes where, the cautions", Topic.WallFile, "file") { About = new(SheetKind.Wall, wall) };

    public static Ask Keep(WallFilled found, WallFilled? kept, string currencySign) => new Ask.Choose(
        $"Keep how {found.Kept.Sheet.Name} is filled, to be cut and stacked? It {LayText.InShort(found, currencySign)}.{(kept is null ? "" : found.Again is null ? " What still waits of the one that is kept is given up." : " It goes on under the number of the one that is kept: what is cut stays, and what it takes no more is given up.")}",
        [new('y', "keep it", new Errand.KeepWall(found))]);

    public static Ask Enter(StageWall wall, IReadOnlyList<NewName> strange) => new Ask.Choose(
        $"Enter what {wall.Sheet.Name} is cut and counted among the needs of {wall.Stage}, in the place of what it entered before?{(strange.Count == 0 ? "" : $" New names, which no piece, price or stage has yet: {string.Join(", ", strange.Select(name => name.Material.Name))}.")}",
        [new('y', strange.Count == 0 ? "enter it" : "they are meant, enter it", new Errand.EnterWall(wall.Sheet.Name, [.. strange.Select(name => name.Material.Name)]))]);

    public static Ask Courses(string wall) =>
        new Ask.Write($"Which courses of {wall} are stacked as the kept laying has them? Numbers from the bottom, then a leg and a face where it is not all of them: 1-3 leg A inside. Laid otherwise: 3 leg A inside: new, cut, HNE WPH3 2'", Topic.Stacked, "course") { About = new(SheetKind.Wall, wall) };

    public static Ask Stack(StackedWish wish) => new Ask.Choose(
        $"Is it stacked: {Told(wish)} of {wish.Wall}? Its cuts are booked, what is left of the pieces comes back to the yard, and the other courses stay kept as they are filled",
        [new('y', "it is stacked", new Errand.StackWall(wish))]);

    /// <summary>The wish in words: <c>courses 1, 2 of leg A, inside</c>.</summary>
    public static string Told(StackedWish wish) =>
        $"{(wish.Courses.Count == 1 ? "course" : "courses")} {string.Join(", ", wish.Courses)}{(wish.Leg is { } leg ? $" of leg {leg}" : "")}{(wish.Face is { } face ? $", {WallWords.Of(face)}" : wish.Leg is null ? ", every leg and face" : ", both faces")}{(wish.Laid is { } laid ? $", laid otherwise: {LaidLine.Write(laid)}" : "")}";
}
