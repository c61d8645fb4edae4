using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Pieces, bins and labels.</content>
public sealed partial class YardChange
{
    private const int MostBlanks = 10_000;

    // Codes of pieces that were refused: what is cut from one of them is no fault of its own.
    private readonly HashSet<Code> _refused = [];

    /// <summary>
    /// Adds a piece and gives its code; draws one where it has none. A blank label with that code is taken. Faults: those of
    /// <see cref="PieceRules"/> and <see cref="FamilyRules"/>, a code in use, a stage or parent that is not there.
    /// A piece that is not reserved is reserved for nothing.
    /// </summary>
    public Code Add(Piece piece)
    {
        var owner = piece.Code.IsNone ? "nothing" : Owner(piece.Code);
        if (piece.Code.IsNone) piece = piece with { Code = _yard.NewCode() };
        var checkedPiece = Checked(piece, before: null);
        var taken = owner is not ("nothing" or "blank");
        if (taken) _faults.Add(Taken(owner, piece.Code));
        if (checkedPiece is null || taken)
        {
            _refused.Add(piece.Code);
            return piece.Code;
        }

        if (owner == "blank") Database.Run("blank_taken", ("code", piece.Code.Text));
        Write("piece_add", checkedPiece);
        return piece.Code;
    }

    /// <summary>
    /// Sets everything of a piece that is there. A piece that leaves the yard leaves the labels that wait too. Faults as for
    /// <see cref="Add"/>, and a code that no piece has.
    /// </summary>
    public void Update(Piece piece)
    {
        if (_refused.Contains(piece.Code)) return;
        if (_reader.Piece(piece.Code) is not { } before) _faults.Add(YardFaults.NoSuchCode(piece.Code.ToString()));
        else if (Checked(piece, before) is { } good)
        {
            Write("piece_set", good);
            if (!good.OnHand) LabelsPrinted([good.Code]);
            LeaveBundle(good);
        }
    }

    /// <summary>Adds a bin, or sets everything of one that is there. Takes a blank label; draws a code where it has none; gives the code.</summary>
    public Code Put(Bin bin)
    {
        var owner = bin.Code.IsNone ? "nothing" : Owner(bin.Code);
        if (bin.Code.IsNone) bin = bin with { Code = _yard.NewCode() };
        var taken = owner is not ("nothing" or "blank" or "bin");
        if (taken) _faults.Add(Taken(owner, bin.Code));
        if (Refused(PieceRules.Check(bin) is { Ok: false } wrong ? wrong.Faults : []) || taken) return bin.Code;

        if (owner == "blank") Database.Run("blank_taken", ("code", bin.Code.Text));
        Database.Run(
            owner == "bin" ? "bin_set" : "bin_add",
            ("code", bin.Code.Text),
            ("hardware", bin.Hardware.Name),
            ("unit", bin.Hardware.Unit),
            ("quantity", bin.Quantity),
            ("place", bin.Place),
            ("note", bin.Note));
        return bin.Code;
    }

    /// <summary>Takes so many out of the bins of one kind of hardware, first entered first. A fault where they hold fewer.</summary>
    public void TakeHardware(Hardware hardware, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var bins = _reader.Bins().Where(known => known.Bin.Hardware.Equals(hardware)).ToArray();
        var there = bins.Sum(known => (long)known.Bin.Quantity);
        if (there < count)
        {
            _faults.Add(StoreFaults.NotEnoughHardware(hardware.Name, count, there));
            return;
        }

        foreach (var (id, bin) in bins)
        {
            var taken = Math.Min(count, bin.Quantity);
            if (taken > 0) Database.Run("bin_take", ("count", taken), ("id", id));
            count -= taken;
        }
    }

    /// <summary>Issues codes for labels that are printed before their pieces exist.</summary>
    public IReadOnlyList<Code> IssueBlanks(int count)
    {
        if (count is < 1 or > MostBlanks)
        {
            _faults.Add(StoreFaults.BlankCount());
            return [];
        }

        var codes = new Code[count];
        for (var i = 0; i < count; i++)
        {
            codes[i] = _yard.NewCode();
            Database.Run("blank_add", ("code", codes[i].Text));
        }

        return codes;
    }

    /// <summary>
    /// Queues labels to be printed, in this order; one that waits already keeps its place. A piece that is gone needs
    /// none and is passed over. A fault for a code of nothing.
    /// </summary>
    public void QueueLabels(IEnumerable<Code> codes)
    {
        foreach (var code in codes)
        {
            if (_refused.Contains(code)) continue;
            var owner = Owner(code);
            if (owner == "nothing") _faults.Add(YardFaults.NoSuchCode(code.ToString()));
            else if (owner == "void") _faults.Add(LabelFaults.IsVoid(code.ToString()));
            else if (owner != "piece" || _reader.Piece(code) is { OnHand: true }) Database.Run("label_add", ("code", code.Text));
        }
    }

    /// <summary>Takes labels off the queue; one that does not wait is passed over.</summary>
    public void LabelsPrinted(IEnumerable<Code> codes)
    {
        foreach (var code in codes) Database.Run("label_printed", ("code", code.Text));
    }

    private static Fault Taken(string owner, Code code) => owner switch
    {
        "void" => LabelFaults.IsVoid(code.ToString()),
        "place" => LabelFaults.IsAPlace(code.ToString()),
        "bundle" => LabelFaults.IsABundle(code.ToString()),
        _ => YardFaults.CodeInUse(code.ToString()),
    };

    private string Owner(Code code) => (string)Database.Value("code_owner", ("code", code.Text));

    private Piece? Checked(Piece piece, Piece? before)
    {
        var rules = PieceRules.Check(piece);
        var faults = rules.Ok ? [] : rules.Faults.ToList();
        if (piece.State != PieceState.Reserved) piece = piece with { ReservedFor = "" };
        else if (piece.ReservedFor.Length > 0 && StageId(piece.ReservedFor) is null) faults.Add(YardFaults.NoSuchStage(piece.ReservedFor));
        faults.AddRange(FamilyFaults(piece, before));
        return Refused(faults) || _refused.Contains(piece.CutFrom) ? null : rules.Value with { ReservedFor = piece.ReservedFor };
    }

    private IEnumerable<Fault> FamilyFaults(Piece piece, Piece? before)
    {
        if (before is not null && (before.Length, before.Width, before.CutFrom) == (piece.Length, piece.Width, piece.CutFrom) && before.Material.Equals(piece.Material))
            yield break;
        if (before is not null && FamilyRules.Check(piece, _reader.CutFrom(piece.Code)) is { } tooShort) yield return tooShort;
        if (piece.CutFrom.IsNone || _refused.Contains(piece.CutFrom)) yield break;

        if (_reader.Piece(piece.CutFrom) is not { } parent) yield return StoreFaults.CutFromNothing(piece.CutFrom.ToString());
        else if (Database.Number("piece_is_ancestor", ("of", piece.CutFrom.Text), ("code", piece.Code.Text)) == 1)
            yield return StoreFaults.CutFromItself(piece.Code.ToString());
        else if (FamilyRules.Check(parent, _reader.CutFrom(parent.Code).Where(child => child.Code != piece.Code).Append(piece)) is { } tooMuch)
            yield return tooMuch;
    }

    private void Write(string query, Piece piece) => Database.Run(
        query,
        ("code", piece.Code.Text),
        ("material", piece.Material.Name),
        ("length", piece.Length.Units),
        ("width", piece.Width.Units),
        ("condition", Words.Condition[piece.Condition]),
        ("bad_spots", Values.Spans(piece.BadSpots)),
        ("trim_left", piece.TrimLeft.Units),
        ("trim_right", piece.TrimRight.Units),
        ("treated", piece.Treated),
        ("treated_with", piece.TreatedWith),
        ("stamped", piece.Stamped),
        ("nails", piece.Nails),
        ("concrete", piece.Concrete),
        ("oiled", piece.Oiled),
        ("place", piece.Place),
        ("from_stage", piece.FromStage),
        ("cut_from", Values.CodeOrNull(piece.CutFrom)),
        ("first_line", piece.FirstLine?.Units),
        ("note", piece.Note),
        ("state", Words.State[piece.State]),
        ("reserved_for", piece.State == PieceState.Reserved ? StageId(piece.ReservedFor) : null));
}
