using System.Collections.Immutable;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

public sealed class CutSheetTests
{
    private static readonly KeptPlan Kept = new(
        7, new DateOnly(2026, 11, 24), Invented.Plan, [.. Invented.Plan.Pieces.Select(_ => PlanStep.Waiting)], HardwareDone: false);

    [Fact]
    public void No_line_is_wider_than_80_columns()
    {
        foreach (var unit in Enum.GetValues<LengthUnit>())
            Lines(Invented.Options with { Settings = Invented.Options.Settings with { Unit = unit } })
                .Should().OnlyContain(line => TextColumns.Width(line) <= 80);
    }

    [Fact]
    public void The_longest_texts_the_yard_allows_break_no_column()
    {
        var name = new string('木', 30) + " " + new string('W', 29);
        var piece = Invented.Plan.Pieces[0] with
        {
            Source = Invented.Crowded with { Length = Length.Longest, Note = string.Concat(Enumerable.Repeat("crooked ", 60)) },
            Cuts = [new PlannedCut(name, name, Length.Inches(0.515625m), Length.Inches(30), Use.Structural)],
            Remainders = [],
        };
        var plan = Invented.Plan with { Pieces = [piece], Stages = [name], Unfilled = [new Unfilled(name, name, 1, name)] };

        var lines = CutSheet.Text(plan, Invented.Options).Split('\n');

        lines.Should().OnlyContain(line => TextColumns.Width(line) <= 80);
        var cut = lines.SkipWhile(line => !line.StartsWith("    A ")).Take(8).ToArray();
        string.Concat(cut.Select(line => line.Replace(" ", ""))).Should().Contain("木木木木木木木木");
        CutSheet.Pdf(plan, Invented.Options).Length.Should().BePositive();
    }

    [Fact]
    public void Wide_letters_leave_the_columns_after_them_in_line()
    {
        var plan = Invented.Plan with
        {
            Pieces = [Invented.Plan.Pieces[1] with { Cuts = [Invented.Plan.Pieces[1].Cuts[0] with { Cut = "木 práh" }] }],
        };

        var lines = CutSheet.Text(plan, Invented.Options).Split('\n');
        var head = lines.First(line => line.StartsWith("        start"));
        var row = lines.First(line => line.Contains("木 práh"));

        TextColumns.Width(row[..row.IndexOf("footing", StringComparison.Ordinal)]).Should().Be(head.IndexOf("stage", StringComparison.Ordinal));
    }

    [Fact]
    public void Pieces_are_fetched_place_by_place_and_new_ones_come_last()
    {
        var places = Part(1).Where(line => line.StartsWith("  ") && !line.StartsWith("   ")).Select(line => line.Trim());

        places.Should().Equal("invented loft", "invented rack", "Jiří's invented 木 shed", "no place noted", "new, from the store");
    }

    [Fact]
    public void What_to_pull_or_scrape_first_stands_in_the_list_and_at_the_piece()
    {
        string.Join(" ", Part(1).Select(line => line.Trim())).Should().Contain("pull the nails and");
        Part(2).Should().Contain("    Before cutting: pull the nails and scrape off the concrete. 6 saw cuts, 3 of");
    }

    [Fact]
    public void Every_cut_has_its_start_length_end_name_and_stage()
    {
        // 84-1/8 in is 7' 1/8"; 48 in later is 11' 1/8".
        Part(2).Should().Contain("    B   7' 1/8\"        4'             11' 1/8\"       waler             footing");
    }

    [Fact]
    public void A_remainder_that_is_kept_says_that_it_gets_a_label()
    {
        Part(2).Should().Contain("    =   18'            2'             20'            keep, new label");
        Part(2).Should().Contain("    =   2' 6\"          1' 6\"          4'             keep, new label");
        Part(2).Should().Contain("    .   11' 1/4\"       3-3/4\"         11' 4\"         scrap");
    }

    [Fact]
    public void Bars_are_to_one_scale()
    {
        var bars = Part(2).Select(line => line.Trim()).Where(line => line.StartsWith('[')).ToArray();

        // The bar of 20 ft takes 74 characters; 136 in of 240 in take 74 x 136 / 240 = 41.9.
        bars.Max(bar => bar.Length).Should().Be(76);
        bars[0].Length.Should().Be(42 + 2);
    }

    [Fact]
    public void The_shopping_list_adds_up_with_tax()
    {
        var list = ShoppingList.Of(Invented.Plan.Pieces, Invented.Plan.Hardware, Invented.Options);

        // 2 x 4.35 + 11.80 + 16 x 1.15 = 38.90, and 8.25 % of it is 3.20925.
        list.Rows.Select(row => (row.Material.Name, row.Count, row.Cost.Cents)).Should().Equal(("2x4", 2, 870L), ("2x6", 1, 1180L), ("form tie 8 in", 16, 1840L));
        list.Cost.Should().Be(new Money(3890));
        list.Tax.Should().Be(new Money(321));
        list.Total.Should().Be(new Money(4211));
    }

    [Fact]
    public void The_day_to_order_by_is_the_first_stages_day_less_the_lead_time()
    {
        var list = ShoppingList.Of(Invented.Plan.Pieces, Invented.Plan.Hardware, Invented.Options);

        // Blocking serves the footing of 11-28 and the bench of 12-12; its boards take 4 days.
        list.Rows[0].Needed.Should().Be(new DateOnly(2026, 11, 28));
        list.Rows[0].OrderBy.Should().Be(new DateOnly(2026, 11, 24));
        list.Rows[1].OrderBy.Should().BeNull("no lead time is known");
        Part(3).Should().Contain("         price of 2026-11-02; from the yard by the bridge; order by 2026-11-24:")
            .And.Contain("         TOO LATE for 2026-11-28");
    }

    [Fact]
    public void Without_a_date_the_lead_time_itself_is_shown()
    {
        Lines(Invented.Options with { StageDates = ImmutableDictionary<string, DateOnly>.Empty })
            .Should().Contain("         price of 2026-11-02; from the yard by the bridge; takes 4 days");
    }

    [Theory]
    [InlineData(90, "price of 2026-08-27")]
    [InlineData(91, "OLD PRICE, seen 2026-08-26")]
    public void A_price_older_than_90_days_is_marked(int days, string said)
    {
        var seen = Invented.Day.AddDays(-days);
        var piece = new PlannedPiece
        {
            Bought = new StorePrice { Material = Invented.Material("2x4"), Length = Length.Feet(8), Price = new Money(400), Date = seen },
            Cuts = [],
            Remainders = [],
            SawCuts = 0,
        };

        CutSheet.Text(Invented.Plan with { Pieces = [piece] }, Invented.Options).Should().Contain(said);
    }

    [Fact]
    public void What_stays_unfilled_says_why()
    {
        Part(5).Should().Contain("  1 x top (bench): the longest 2x12 in the yard is 9' 2\", too short by 10\"");
    }

    [Fact]
    public void Each_tier_is_proven_or_says_how_far_off()
    {
        Part(6).Should().Contain("  Left unfilled: 1 cut (proven).")
            .And.Contain("  Spent, without tax: $38.90 (proven).")
            .And.Contain("  Yard value given up: $12.34 (not proven: no plan gets below $11.00).")
            .And.Contain("  Saw cuts: 18; no bound is claimed for these.");
    }

    [Fact]
    public void Savings_say_what_they_are_measured_against()
    {
        var text = string.Join(" ", Part(6).Select(line => line.Trim()));

        text.Should().Contain("The same cuts, bought entirely new at their own best plan, would cost $127.75 without tax (proven the cheapest).")
            .And.Contain("This plan spends $38.90, so it saves $88.85.");
    }

    [Fact]
    public void A_loss_is_called_one()
    {
        PlanWorth.Of(Invented.Plan with { Savings = new PlanSavings(new Money(1000), new Money(1250), AllNewProven: false, Unpriced: []) }, YardSettings.Usual)
            .Should().Contain("This plan spends $12.50: $2.50 more than all new.")
            .And.Contain("The same cuts, bought entirely new at their own best plan, would cost $10.00 without tax (the best found; a cheaper one may exist, and then less is saved).");
    }

    [Fact]
    public void Reclaimed_lumber_under_load_is_said_with_its_source_and_whom_it_defers_to()
    {
        var text = string.Join(" ", Part(7).Select(line => line.Trim()));

        text.Should().Contain("reclaimed lumber goes to structural use: sill plate (footing).")
            .And.Contain("[IRC R502.1, R602.1, R802.1; IRC 2012 R104.9.1]")
            .And.Contain("reclaimed lumber goes to bracing: waler (footing).")
            .And.EndWith("Local code and licensed practice decide. ");
    }

    [Fact]
    public void A_kept_plan_says_its_number_and_day()
    {
        CutSheet.Text(Kept, Invented.Options).Should().Contain("Plan 7, made 2026-11-24; printed 2026-11-25.");
    }

    [Fact]
    public void What_is_done_is_listed_and_neither_drawn_nor_bought()
    {
        var steps = Kept.Steps.ToArray();
        steps[0] = PlanStep.Done;
        steps[1] = new PlanStep(StepState.DoneOtherwise, Invented.Plan.Pieces[1]);
        steps[2] = PlanStep.Dropped;
        steps[5] = PlanStep.Done;
        var rest = Invented.Stud with { Code = Invented.Code("CXPERKR"), Material = Invented.Plan.Pieces[0].Material, Length = Length.Inches(29.5m) };
        var options = Invented.Options with { CameBack = ImmutableDictionary<int, ImmutableArray<Piece>>.Empty.Add(0, [rest, rest with { Code = Invented.Code("69EFEPJ"), Length = Length.Inches(14) }]) };
        var text = CutSheet.Text(Kept with { Steps = steps, HardwareDone = true, Plan = Kept.Plan with { LetGo = [2] } }, options);

        text.Should().Contain("    1: C99 MFXY, 2x10, 11' 4\": cut as planned\n      kept: 2' 5-1/2\", label CXP ERKR\n      kept: 1' 2\", label 69E FEPJ\n")
            .And.Contain("    2: 6P7 RX46, 2x4 treated, 8': cut, but not as planned\n")
            .And.Contain("    3: 3XN HY6H, 2x4, 7' 8-5/8\": given up: it was let go\n", "other pieces wait still")
            .And.Contain("    6: new, 2x4, 8': cut as planned\n")
            .And.NotContain("waler             footing")
            .And.Contain("      1  2x4 8'                                  $4.35         $4.35\n", "one of the two boards is bought and cut already")
            .And.NotContain("     16  form tie")
            .And.Contain("Counted out already.");
    }

    [Fact]
    public void What_did_not_come_of_its_piece_is_lacking_again()
    {
        var steps = Kept.Steps.ToArray();
        var planned = Invented.Plan.Pieces[1];
        steps[1] = new PlanStep(StepState.DoneOtherwise, planned with { Cuts = [] });

        var text = CutSheet.Text(Kept with { Steps = steps }, Invented.Options);

        foreach (var cuts in planned.Cuts.GroupBy(cut => (cut.Stage, cut.Cut)))
            text.Should().Contain($"{cuts.Count()} x {cuts.Key.Cut} ({cuts.Key.Stage}): it did not come out of its piece");
        text.Should().NotContain("Nothing: every cut is filled.");

        PlanStep[] dropped = [.. steps.Select(step => step.State == StepState.Waiting ? PlanStep.Dropped : step)];
        CutSheet.Text(Kept with { Steps = dropped }, Invented.Options).Should().NotContain("it did not come out of its piece", "the rest was matched again")
            .And.Contain(": given up: dropped, or matched again\n");
        CutSheet.Text(Kept with { Steps = dropped }, Invented.Options).Should().Contain("    6 to 7: new, 2x4, 8': given up: dropped, or matched again\n", "nobody looks for what was not bought");
    }

    [Fact]
    public void What_was_planned_on_a_piece_that_was_let_go_is_not_filled_any_more_while_the_rest_waits()
    {
        var steps = Kept.Steps.ToArray();
        steps[2] = PlanStep.Dropped;

        var text = CutSheet.Text(Kept with { Steps = steps, Plan = Kept.Plan with { LetGo = [2] } }, Invented.Options);

        foreach (var cuts in Invented.Plan.Pieces[2].Cuts.GroupBy(cut => (cut.Stage, cut.Cut)))
            text.Should().Contain($"{cuts.Count()} x {cuts.Key.Cut} ({cuts.Key.Stage}): its piece was let go; match again");
        text.Should().Contain(": given up: it was let go\n");
    }

    [Fact]
    public void Hardware_that_was_given_up_is_not_bought()
    {
        CutSheet.Text(Kept with { HardwareDropped = true }, Invented.Options)
            .Should().Contain("  Given up: dropped, or matched again.").And.NotContain("     16  form tie");
    }

    [Fact]
    public void Script_codes_are_written_as_the_script_wrote_them()
    {
        var text = CutSheet.Text(Invented.Plan, Invented.Options with { CodeText = code => "board-" + code.Text });

        text.Should().Contain("board-C99MFXY").And.NotContain("C99 MFXY");
    }

    [Fact]
    public void An_empty_plan_is_a_whole_sheet()
    {
        var plan = new Plan
        {
            Stages = [],
            Tiers = new Tiers(Figure.Best(0), [], Figure.Best(0), Figure.Best(0), 0),
            Pieces = [],
            Hardware = [],
            Unfilled = [],
            Savings = new PlanSavings(Money.Zero, Money.Zero, AllNewProven: true, []),
            Unpriced = [],
        };

        var text = CutSheet.Text(plan, Invented.Options);

        text.Should().Contain("1. Fetch, place by place\n------------------------\n  Nothing.\n").And.Contain("4. Hardware\n-----------\n  None.\n")
            .And.Contain("Nothing: every cut is filled.").And.Contain("Proven: in the order below");
        CutSheet.Pdf(plan, Invented.Options).Length.Should().BePositive();
    }

    [Fact]
    public void Control_characters_are_shown_harmlessly_in_text_and_print()
    {
        var plan = Invented.Plan with { Pieces = [Invented.Plan.Pieces[1] with { Cuts = [Invented.Plan.Pieces[1].Cuts[0] with { Cut = "sill\u001b[2J" }] }] };

        CutSheet.Text(plan, Invented.Options with { Title = "bench\u0007" }).Should().Contain("sill\\u001b[2J").And.Contain("BENCH\\U0007").And.NotContain("\u001b");
        AllText(CutSheet.Pdf(plan, Invented.Options)).Should().Contain("sill\\u001b[2J");
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes()
    {
        CutSheet.Pdf(Invented.Plan, Invented.Options).SequenceEqual(CutSheet.Pdf(Invented.Plan, Invented.Options)).Should().BeTrue();
    }

    [Fact]
    public void Paper_is_Letter_for_inches_and_A4_for_millimetres()
    {
        var inches = PrintedPage.Of(CutSheet.Pdf(Invented.Plan, Invented.Options))[0];
        var millimetres = PrintedPage.Of(CutSheet.Pdf(Invented.Plan, Invented.Options with { Settings = YardSettings.Usual with { Unit = LengthUnit.Millimetre } }))[0];

        (inches.Width, inches.Height).Should().Be((612, 792));
        millimetres.Width.Should().BeApproximately(210 * 72 / 25.4, 0.001);
        millimetres.Height.Should().BeApproximately(297 * 72 / 25.4, 0.001);
    }

    [Fact]
    public void Printed_bars_are_to_scale()
    {
        // The longest piece, 240 in, is as wide as the page less two margins of 43 pt: 526 pt. A kept remainder of 24 in is 52.6 pt.
        using var document = UglyToad.PdfPig.PdfDocument.Open(CutSheet.Pdf(Invented.Plan, Invented.Options));
        var frames = document.GetPages().SelectMany(page => page.Paths)
            .Where(path => path.IsStroked).Select(path => path.GetBoundingRectangle()!.Value)
            .Where(box => Math.Abs(box.Height - 20) < 0.01).ToArray();

        const double perInch = 526 / 240.0;
        frames.Should().Contain(box => Math.Abs(box.Left - (43 + 216 * perInch)) < 0.01 && Math.Abs(box.Width - 24 * perInch) < 0.01, "the bar's remainder");
        frames.Should().Contain(box => Math.Abs(box.Left - (43 + 36 * perInch)) < 0.01 && Math.Abs(box.Width - 48 * perInch) < 0.01, "the first waler");
        frames.Should().Contain(box => Math.Abs(box.Left - (43 + 30 * perInch)) < 0.01 && Math.Abs(box.Width - 6 * perInch) < 0.01, "the bad spot");
    }

    [Theory]
    [InlineData(LengthUnit.Inch)]
    [InlineData(LengthUnit.Millimetre)]
    public void Everything_on_paper_stays_inside_the_margins_and_nothing_overprints(LengthUnit unit)
    {
        foreach (var page in PrintedPage.Of(CutSheet.Pdf(Invented.Plan, Invented.Options with { Settings = YardSettings.Usual with { Unit = unit } })))
        {
            foreach (var line in page.Lines)
            {
                line.Left.Should().BeGreaterThan(42, line.Text);
                line.Right.Should().BeLessThan(page.Width - 42, line.Text);
                line.Bottom.Should().BeLessThan(page.Height - 40, line.Text);
                page.Lines.Where(other => other != line && other.Overlaps(line)).Should().BeEmpty();
            }
        }
    }

    [Fact]
    public void The_printed_sheet_says_what_the_text_says()
    {
        var printed = AllText(CutSheet.Pdf(Invented.Plan, Invented.Options));

        foreach (var words in new[]
        {
            "Orchard bench and its footing", Invented.Note, "pull the nails and scrape off the concrete", "leg, přední", "keep, new label",
            "OLD PRICE, seen 2026-08-26", "$42.11", "1 x top (bench): the longest 2x12 in the yard is 9' 2\", too short by 10\"",
            "Yard value given up: $12.34 (not proven: no plan gets below $11.00).", "This plan spends $38.90, so it saves $88.85.",
            "Local code and licensed practice decide.", "page 1 of 3",
        })
            printed.Should().Contain(words);
    }

    [Fact]
    public void A_plan_of_many_pieces_takes_as_many_pages_as_it_needs()
    {
        var plan = Invented.Plan with { Pieces = [.. Enumerable.Repeat(Invented.Plan.Pieces[0], 25)] };

        var pages = PrintedPage.Of(CutSheet.Pdf(plan, Invented.Options));

        pages.Count.Should().BeInRange(5, 10);
        pages[^1].Lines.Select(line => line.Text).Should().Contain($"page {pages.Count} of {pages.Count}");
    }

    // With their rows below, five such panels stood on a page.
    [Fact]
    public void Short_pieces_have_their_rows_beside_the_bar_so_that_far_more_stand_on_a_page_in_letters_as_large()
    {
        var panel = new PlannedPiece
        {
            Source = Invented.Panel with { Length = Length.Feet(4) },
            SawCuts = 1,
            Cuts = [new PlannedCut("walls", "A outside, course 3, piece 4", Length.Zero, Length.Inches(30), Use.Nonstructural)],
            Remainders = [],
        };
        foreach (var unit in Enum.GetValues<LengthUnit>())
        {
            var pages = PrintedPage.Of(CutSheet.Pdf(Invented.Plan with { Pieces = [.. Enumerable.Repeat(panel, 60)], Stages = ["walls"] }, Invented.Options with { Settings = Invented.Options.Settings with { Unit = unit } }));

            var most = pages.Max(page => page.Lines.Count(line => line.Text == "A outside, course 3, piece 4"));
            most.Should().BeGreaterThanOrEqualTo(8);
            foreach (var page in pages)
            {
                page.Lines.Where(line => line.Text == "A outside, course 3, piece 4" && line.Size < 9).Should().BeEmpty();
                foreach (var line in page.Lines)
                {
                    if (line.Text.StartsWith("A outside", StringComparison.Ordinal)) line.Right.Should().BeLessThan(page.Width - 42);
                    page.Lines.Where(other => other != line && other.Overlaps(line)).Should().BeEmpty(line.Text);
                }
            }

            pages.Where(page => page.Lines.Any(line => line.Text.StartsWith("A outside", StringComparison.Ordinal))).Should().OnlyContain(page => page.Lines.Any(line => line.Text == "start"), "what a figure means stands on each page");
        }
    }

    private static string[] Lines(CutSheetOptions options) => CutSheet.Text(Invented.Plan, options).Split('\n');

    // The lines of one numbered part, without its heading.
    private static string[] Part(int number) =>
        [.. Lines(Invented.Options).SkipWhile(line => !line.StartsWith($"{number}. ")).Skip(2).TakeWhile(line => !line.StartsWith($"{number + 1}. "))];

    private static string AllText(byte[] pdf) => string.Join("\n", PrintedPage.Of(pdf).Select(page => page.Text));
}
