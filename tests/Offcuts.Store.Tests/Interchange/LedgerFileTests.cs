using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The ledger as a spreadsheet gets it. Its lines are invented.</summary>
public sealed class LedgerFileTests
{
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
            text);

        text.ToString().Should().Be(
            "day,stage,plan,all_new,spent,saved,board_feet,panel_sq_ft,weight_lb,pieces,hardware\r\n"
            + "2026-05-03,'=walls,4,120.50,20.00,100.50,26.667,32,61.25,7,40\r\n"
            + "2026-05-04,roof,,0.00,3.50,-3.50,0,0,0,0,0\r\n");
    }
}
