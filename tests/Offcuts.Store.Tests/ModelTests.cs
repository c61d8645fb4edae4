using System.Collections.Immutable;
using CsCheck;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>
/// The yard against a model of it in memory: after any sequence of changes, refused changes, undos and redos both hold the same, and
/// both refuse the same. A failing sequence is printed with its seed; it is replayed with the environment variable CsCheck_Seed.
/// </summary>
public sealed class ModelTests
{
    private static readonly string[] Kinds = ["bolt", "tie"];

    /// <summary>One act: what kind, and two numbers that it may use.</summary>
    private sealed record Act(string Kind, int A, int B);

    /// <summary>What the yard should hold.</summary>
    private sealed record Model(ImmutableList<Piece> Pieces, ImmutableList<Bin> Bins, ImmutableList<string> Stages, ImmutableList<Code> Queue)
    {
        public static readonly Model Empty = new([], [], [], []);

        public Piece? Piece(int number) => Pieces.Find(piece => piece.Code == Yards.CodeNumber(number));

        public bool Knows(Code code) => Pieces.Exists(piece => piece.Code == code) || Bins.Exists(bin => bin.Code == code);

        public string Text => string.Join('\n',
            [
                .. Pieces.Select(piece => $"{piece.Code} {piece.Length} {piece.State} {piece.ReservedFor} {piece.FromStage} {piece.CutFrom}"),
                .. Bins.Select(bin => $"{bin.Code} {bin.Hardware} {bin.Quantity}"),
                .. Stages,
                string.Join(", ", Queue),
            ]);
    }

    private static readonly Gen<Act> AnyAct =
        Gen.Select(
            Gen.OneOf("add", "add", "cut", "cut", "state", "reserve", "reserve", "new stage", "new stage", "rename", "remove", "move", "put", "put", "take", "queue", "print", "undo", "undo", "undo", "redo", "redo"),
            Gen.Int[0, 5],
            Gen.Int[0, 5],
            (kind, a, b) => new Act(kind, a, b));

    [Fact]
    public void The_yard_holds_what_a_model_of_it_holds_after_any_changes_undos_and_redos()
    {
        using var folder = new TemporaryFolder();
        var files = 0;
        AnyAct.Array[1, 40].Sample(
            acts =>
            {
                using var yard = Yards.Open(folder[$"yard {Interlocked.Increment(ref files)}"]);
                yard.Database.Execute("PRAGMA synchronous = OFF");
                Follow(yard, acts);
            },
            iter: 60,
            threads: 1);
    }

    private static void Follow(YardFile yard, Act[] acts)
    {
        var states = new Stack<Model>([Model.Empty]);
        var takenBack = new Stack<Model>();
        foreach (var act in acts)
        {
            if (act.Kind == "undo")
            {
                yard.Undo().Ok.Should().Be(states.Count > 1);
                if (states.Count > 1) takenBack.Push(states.Pop());
            }
            else if (act.Kind == "redo")
            {
                yard.Redo().Ok.Should().Be(takenBack.Count > 0);
                if (takenBack.TryPop(out var again)) states.Push(again);
            }
            else
            {
                var next = Next(states.Peek(), act);
                yard.Change(act.ToString(), change => Make(change, yard, act)).Ok.Should().Be(next is not null, act.ToString());
                if (next is not null)
                {
                    states.Push(next);
                    takenBack.Clear();
                }
            }

            Held(yard).Text.Should().Be(states.Peek().Text);
        }
    }

    private static Model Held(YardFile yard) => new(
        [.. yard.Pieces(onHandOnly: false)], [.. yard.Bins()], [.. yard.Stages().Select(stage => stage.Name)], [.. yard.LabelQueue()]);

    private static void Make(YardChange change, YardFile yard, Act act)
    {
        var piece = yard.Piece(Yards.CodeNumber(act.A)) ?? Yards.Board(act.A);
        switch (act.Kind)
        {
            case "add": change.Add(Yards.Board(act.A) with { FromStage = Stage(act.B) }); break;
            case "cut": change.Add(Yards.Board(act.A, inches: 40) with { CutFrom = Yards.CodeNumber(act.B) }); break;
            case "state": change.Update(piece with { State = State(act.B) }); break;
            case "reserve": change.Update(piece with { State = PieceState.Reserved, ReservedFor = Stage(act.B) }); break;
            case "new stage": change.AddStage(new Stage(Stage(act.A), null, [], [])); break;
            case "rename": change.RenameStage(Stage(act.A), Stage(act.B)); break;
            case "remove": change.RemoveStage(Stage(act.A)); break;
            case "move": change.MoveStage(Stage(act.A), act.B); break;
            case "put": change.Put(new Bin(Yards.CodeNumber(100 + act.A), Yards.Hardware(Kinds[act.A % 2]), act.B)); break;
            case "take": change.TakeHardware(Yards.Hardware(Kinds[act.A % 2]), act.B); break;
            case "queue": change.QueueLabels([Yards.CodeNumber(act.A), Yards.CodeNumber(100 + act.B)]); break;
            case "print": change.LabelsPrinted([Yards.CodeNumber(act.A)]); break;
            default: throw new InvalidOperationException(act.Kind);
        }
    }

    // The same in memory; null where it is refused.
    private static Model? Next(Model model, Act act)
    {
        var (a, b) = (act.A, act.B);
        var piece = model.Piece(a);
        var (from, to) = (Stage(a), Stage(b));
        switch (act.Kind)
        {
            case "add":
                return piece is null ? model with { Pieces = model.Pieces.Add(Yards.Board(a) with { FromStage = to }) } : null;
            case "cut":
                var cut = model.Pieces.FindAll(child => child.CutFrom == Yards.CodeNumber(b)).Sum(child => child.Length.Units) + Yards.In(40).Units;
                return piece is null && model.Piece(b) is { } parent && a != b && cut <= parent.Length.Units
                    ? model with { Pieces = model.Pieces.Add(Yards.Board(a, inches: 40) with { CutFrom = parent.Code }) }
                    : null;
            case "state":
                return piece is null ? null : Replace(piece, piece with { State = State(b), ReservedFor = "" });
            case "reserve":
                return piece is null || !model.Stages.Contains(to) ? null : Replace(piece, piece with { State = PieceState.Reserved, ReservedFor = to });
            case "new stage":
                return model.Stages.Contains(from) ? null : model with { Stages = model.Stages.Add(from) };
            case "rename":
                if (!model.Stages.Contains(from) || (model.Stages.Contains(to) && from != to)) return null;
                return model with
                {
                    Stages = model.Stages.Replace(from, to),
                    Pieces = model.Pieces.ConvertAll(one => one with
                    {
                        ReservedFor = one.ReservedFor == from ? to : one.ReservedFor,
                        FromStage = one.FromStage == from ? to : one.FromStage,
                    }),
                };
            case "remove":
                if (!model.Stages.Contains(from)) return null;
                return model with
                {
                    Stages = model.Stages.Remove(from),
                    Pieces = model.Pieces.ConvertAll(one => one.ReservedFor == from ? one with { State = PieceState.InYard, ReservedFor = "" } : one),
                };
            case "move":
                return model.Stages.Contains(from) && b >= 1 && b <= model.Stages.Count
                    ? model with { Stages = model.Stages.Remove(from).Insert(b - 1, from) }
                    : null;
            case "put":
                var bin = new Bin(Yards.CodeNumber(100 + a), Yards.Hardware(Kinds[a % 2]), b);
                var at = model.Bins.FindIndex(one => one.Code == bin.Code);
                return model with { Bins = at < 0 ? model.Bins.Add(bin) : model.Bins.SetItem(at, bin) };
            case "take":
                return Take(model, Yards.Hardware(Kinds[a % 2]), b);
            case "queue":
                Code[] codes = [Yards.CodeNumber(a), Yards.CodeNumber(100 + b)];
                return codes.All(model.Knows) ? model with { Queue = model.Queue.AddRange(codes.Except(model.Queue).Where(code => code != piece!.Code || piece.OnHand)) } : null;
            case "print":
                return model with { Queue = model.Queue.Remove(Yards.CodeNumber(a)) };
            default:
                throw new InvalidOperationException(act.Kind);
        }

        // A piece that is gone needs no label.
        Model Replace(Piece old, Piece now) => model with
        {
            Pieces = model.Pieces.SetItem(model.Pieces.IndexOf(old), now),
            Queue = now.OnHand ? model.Queue : model.Queue.Remove(now.Code),
        };
    }

    private static Model? Take(Model model, Core.Materials.Hardware hardware, int count)
    {
        var bins = model.Bins.ToBuilder();
        for (var i = 0; i < bins.Count; i++)
        {
            if (!bins[i].Hardware.Equals(hardware)) continue;
            var taken = Math.Min(count, bins[i].Quantity);
            bins[i] = bins[i] with { Quantity = bins[i].Quantity - taken };
            count -= taken;
        }

        return count == 0 ? model with { Bins = bins.ToImmutable() } : null;
    }

    private static string Stage(int number) => $"stage {number}";

    private static PieceState State(int number) =>
        ((PieceState[])[PieceState.InYard, PieceState.Used, PieceState.HandedOver, PieceState.Scrapped, PieceState.Missing])[number % 5];
}
