using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The questions of the catalogue line.</summary>
internal static class StripAsks
{
    public static Ask BlankCount { get; } =
        new Ask.Write($"How many blank labels, for pieces that come later? 1 to {PrintLabels.MostBlanks}", Topic.BlankCount, "count");

    public static Ask Correct(SavedLine line, int back) => new Ask.Write(
        back == 0 ? $"Correct the line saved last: {line.Named}. The labels stay on" : $"Correct the line saved {back + 1} lines ago: {line.Named}. The labels stay on",
        Topic.Correct,
        "right");

    public static Ask LabelFile(int waiting, PaperWish paper) =>
        new Ask.Write($"Write {waiting} {Labels(waiting)} to which PDF file? {Layouts(paper)}", Topic.LabelFile, "file");

    public static Ask BlankFile(int count, PaperWish paper) =>
        new Ask.Write($"Write {count} blank {Labels(count)} to which PDF file? {Layouts(paper)}", Topic.BlankFile, "file");

    private static string Labels(int count) => count == 1 ? "label" : "labels";

    private static string Layouts(PaperWish paper) =>
        $"Behind it, where needed: a layout ({string.Join(", ", PrintLabels.Layouts().Select(layout => layout[0]))}; now {paper.Layout}) and the first free label of a used sheet";
}
