using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>A change of many pieces tells how far it is, and where it is stopped nothing of it is saved.</summary>
public sealed class LongWorkTests
{
    public static TheoryData<string> Acts => ["put", "mark", "judge", "reserve", "free", "label"];

    [Theory]
    [MemberData(nameof(Acts))]
    public void It_tells_how_far_it_is_up_to_its_end(string act)
    {
        On((yard, codes) =>
        {
            var heard = new List<WorkProgress>();
            Do(act, new ChangePieces(yard, new LongWork(heard.Add, CancellationToken.None)), codes).Ok.Should().BeTrue();
            heard.Should().Contain(told => told.Done == codes.Length - 1 && told.Of == codes.Length && told.What == "looking at them");
            heard[^1].Should().Be(new WorkProgress("saving", codes.Length - 1, codes.Length));
        });
    }

    [Theory]
    [MemberData(nameof(Acts))]
    public void Stopped_while_it_is_saved_it_changes_nothing(string act)
    {
        On((yard, codes) =>
        {
            var (before, queue, number) = (yard.Pieces(), yard.LabelQueue(), yard.ChangeNumber);
            using var stop = new CancellationTokenSource();
            var work = new LongWork(
                told =>
                {
                    if (told is { What: "saving", Done: 5 }) stop.Cancel();
                },
                stop.Token);

            var stopped = () => Do(act, new ChangePieces(yard, work), codes);

            stopped.Should().Throw<OperationCanceledException>();
            yard.Pieces().Should().BeEquivalentTo(before);
            yard.LabelQueue().Should().Equal(queue);
            yard.ChangeNumber.Should().Be(number);
        });
    }

    private static Core.Faults.Result<string> Do(string act, ChangePieces change, Code[] codes) => act switch
    {
        "put" => change.PutAt(codes, "trailer"),
        "mark" => change.Mark(codes, PieceState.Missing),
        "judge" => change.Judge(codes, Condition.Poor),
        "reserve" => change.Reserve(codes, "walls"),
        "free" => change.Free(codes),
        _ => change.QueueLabels(codes),
    };

    private static void On(Action<YardFile, Code[]> part)
    {
        using var folder = new TryYard();
        using var yard = YardFile.Open(folder.YardPath, folder.Clock);
        var stages = new ChangeStages(yard);
        stages.Add("walls", null).Ok.Should().BeTrue();
        stages.Add("forms", null).Ok.Should().BeTrue();
        var catalogue = new CataloguePieces(yard);
        catalogue.Save(catalogue.Read(["2x4 8' x12"]).Value).Ok.Should().BeTrue();
        Code[] codes = [.. yard.Pieces().Select(piece => piece.Code)];
        yard.Change("printed", work => work.LabelsPrinted(codes)).Ok.Should().BeTrue();
        new ChangePieces(yard).Reserve(codes, "forms").Ok.Should().BeTrue();
        part(yard, codes);
    }
}
