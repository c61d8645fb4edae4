using Offcuts.Core.Plans;

namespace Offcuts.Print;

/// <summary>
/// What to take to the saw: the pieces to fetch place by place, each piece drawn to scale with its cuts, what to buy, the
/// hardware, what stays unfilled, how good the plan is, and the cautions that apply. Of a kept plan only what still waits is
/// drawn and bought; what lies behind is listed.
/// </summary>
public static class CutSheet
{
    /// <summary>The sheet as text of at most 80 columns, with nothing that needs colour, lines ended by <c>\n</c>.</summary>
    public static string Text(Plan plan, CutSheetOptions options) => CutSheetText.Write(new CutSheetContent(plan, null, options));

    /// <inheritdoc cref="Text(Plan, CutSheetOptions)"/>
    public static string Text(KeptPlan plan, CutSheetOptions options) => CutSheetText.Write(new CutSheetContent(plan.Plan, plan, options));

    /// <summary>The sheet as a PDF: on Letter paper where the unit is the inch, else on A4. The same call gives the same bytes.</summary>
    public static byte[] Pdf(Plan plan, CutSheetOptions options) => CutSheetPdf.Write(new CutSheetContent(plan, null, options), options);

    /// <inheritdoc cref="Pdf(Plan, CutSheetOptions)"/>
    public static byte[] Pdf(KeptPlan plan, CutSheetOptions options) => CutSheetPdf.Write(new CutSheetContent(plan.Plan, plan, options), options);
}
