using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Facts of a piece as a person types them to correct it; one that is null stays as it is.</summary>
public sealed record PieceFacts
{
    /// <summary>What it is.</summary>
    public string? Material { get; init; }

    /// <summary>Its full length; a bare number is in the yard's unit.</summary>
    public string? Length { get; init; }

    /// <summary>sound, fair or poor.</summary>
    public string? Condition { get; init; }

    /// <summary>yes or no.</summary>
    public string? Nails { get; init; }

    /// <summary>yes or no.</summary>
    public string? Concrete { get; init; }

    /// <summary>yes or no.</summary>
    public string? Oiled { get; init; }

    /// <summary>yes or no.</summary>
    public string? Stamped { get; init; }

    /// <summary>yes, no, or with what.</summary>
    public string? Treated { get; init; }

    /// <summary>Bad spots as <c>start..end; start..end</c>, or none.</summary>
    public string? Bad { get; init; }

    /// <summary>End trims as <c>left; right</c>.</summary>
    public string? Trim { get; init; }

    /// <summary>First pattern line, or none.</summary>
    public string? Line { get; init; }

    /// <summary>Where it lies.</summary>
    public string? Place { get; init; }

    /// <summary>The stage it came off.</summary>
    public string? From { get; init; }

    /// <summary>Whatever else there is to say.</summary>
    public string? Note { get; init; }

    /// <summary>The name that these facts give a piece, where nothing has it yet.</summary>
    public IReadOnlyList<NewName> NewNames(KnownNames known) =>
        Material is not null && MaterialReader.Read(Material).TryGet(out var material) ? known.NewAmong([material]) : [];

    /// <summary>Sizes that these facts give the pieces and that are more likely a slip than meant; none where they say nothing of the size.</summary>
    public IReadOnlyList<OddSize> OddSizes(IEnumerable<Piece> pieces, YardSettings settings)
    {
        if (Length is null && Material is null) return [];
        Piece[] changed = [.. pieces.Select(piece => Apply(piece, settings.Unit)).Where(changed => changed.Ok).Select(changed => changed.Value)];
        var odd = OddSize.Among(changed, settings.Unit);
        return odd.Count > 0 || Length is null || !Length.Trim().All(char.IsAsciiDigit)
            ? odd
            : [.. changed.Where(piece => piece.Material is not Sheet).Select(piece => OddSize.LikeFeet(piece.Material, piece.Length, settings)).OfType<OddSize>().Distinct()];
    }

    /// <summary>The piece with these facts, or every fault in them.</summary>
    public Result<Piece> Apply(Piece piece, LengthUnit unit)
    {
        var faults = new List<Fault>();
        T Read<T>(string? text, T old, Func<string, Result<T>> read)
        {
            if (text is null) return old;
            var result = read(text);
            if (result.TryGet(out var value)) return value;
            faults.AddRange(result.Faults);
            return old;
        }

        var changed = piece with
        {
            Material = Read(Material, piece.Material, MaterialReader.Read),
            Length = Read(Length, piece.Length, text => Core.Measures.Length.Parse(text, unit)),
            Condition = Read(Condition, piece.Condition, FactReader.Condition),
            Nails = Read(Nails, piece.Nails, FactReader.YesNo),
            Concrete = Read(Concrete, piece.Concrete, FactReader.YesNo),
            Oiled = Read(Oiled, piece.Oiled, FactReader.YesNo),
            Stamped = Read(Stamped, piece.Stamped, FactReader.YesNo),
            BadSpots = Read(Bad, piece.BadSpots, text => FactReader.BadSpots(text, unit, piece.Length)),
            FirstLine = Read(Line, piece.FirstLine, text => text == "none" ? Result<Length?>.Of(null) : Core.Measures.Length.Parse(text, unit).Then<Length?>(line => Result<Length?>.Of(line))),
            Place = Place is null ? piece.Place : PieceRules.PlaceIn(Place),
            FromStage = From ?? piece.FromStage,
            Note = Note ?? piece.Note,
        };
        if (Trim is not null)
        {
            var (left, right) = Read(Trim, (piece.TrimLeft, piece.TrimRight), text => FactReader.Trim(text, unit));
            changed = changed with { TrimLeft = left, TrimRight = right };
        }

        if (Treated is not null)
        {
            var known = FactReader.YesNo(Treated);
            changed = changed with
            {
                Treated = !known.Ok || known.Value,
                TreatedWith = known.Ok ? (known.Value ? piece.TreatedWith : "") : Treated.Trim(),
            };
        }

        return faults.Count > 0 ? Result<Piece>.Fail(faults) : changed;
    }
}
