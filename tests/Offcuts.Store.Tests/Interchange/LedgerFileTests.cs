using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The ledger as a spreadsheet gets it. Its lines are invented.</summary>
public sealed class LedgerFileTests
{
    private static readonly Code Piece = Yards.CodeNumber(1);

    private static readonly Code Bin = Yards.CodeNumber(2);

    [Fact]
    public void A_line_of_the_ledger_is_a_row_and_a_loss_stays_a_number()
    {
        var text = new StringWriter();
        LedgerFile.Write(
            [
                new LedgerLine
                {
                    Day = new DateOnly(2026, 5, 3),
                    Stage = "=walls",
                    PlanId = 4,
                    AllNew = new Money(12050),
                    Spent = new Money(2000),
                    BoardFeet = new BoardFeet(26m + 2m / 3m),
                    PanelFace = Area.Of(Length.Feet(4), Length.Feet(8)),
                    Weight = new Weight(61.25m),
                    PiecesUsed = 7,
                    HardwareUsed = 40,
                },
                new LedgerLine { Day = new DateOnly(2026, 5, 4), Stage = "roof", Spent = new Money(350) },
            ],
            [
                new HandOver(1, "2222222222222222", new DateOnly(2026, 5, 5), new Terms("=Ann", HandOverKind.Sale, new Money(2500)), new Money(3100), 61_500, null, [new HandOverItem(Piece), new HandOverItem(Bin, 40)]),
                new HandOver(2, "3333333333333333", new DateOnly(2026, 5, 6), new Terms("Bo", HandOverKind.Loan), new Money(900), 0, null, [new HandOverItem(Bin, 12, Back: 5, Settled: 3)]),
                new HandOver(3, "4444444444444444", new DateOnly(2026, 5, 7), new Terms("Jo", HandOverKind.Gift), new Money(0), 0, null, [new HandOverItem(Piece)]),
            ],
            code => code == Piece,
            text);

        text.ToString().Should().Be(
            "day,stage,plan,all_new,spent,saved,board_feet,panel_sq_ft,weight_lb,pieces,hardware,kind,to,worth,price,went_pieces,went_hardware,went_weight_lb,back,settled,still_away,worth_gone\r\n"
            + "2026-05-03,'=walls,4,120.50,20.00,100.50,26.667,32,61.25,7,40,used,,,,,,,,,,\r\n"
            + "2026-05-04,roof,,0.00,3.50,-3.50,0,0,0,0,0,used,,,,,,,,,,\r\n"
            + "2026-05-05,,,,,,,,,,,sale,'=Ann,31.00,25.00,1,40,61.5,0,0,,31.00\r\n"
            + "2026-05-06,,,,,,,,,,,loan,Bo,9.00,,0,12,0,5,3,4,5.25\r\n"
            + "2026-05-07,,,,,,,,,,,gift,Jo,0.00,,1,0,0,0,0,,0.00\r\n");
    }
}
