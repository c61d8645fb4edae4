using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>How a count is meant.</summary>
/// <param name="At">Where everything was seen that no label of a place says otherwise of; empty where the folders say it.</param>
/// <param name="Whole">True where the whole yard was counted: what was not seen anywhere is missing.</param>
/// <param name="Partly">True where no place was counted whole: nothing is said to be missing.</param>
/// <param name="TakeBack">True where what should be gone but was seen comes back too when the count is accepted.</param>
public sealed record CountWish(string At = "", bool Whole = false, bool Partly = false, bool TakeBack = false);

/// <summary>A piece in a count.</summary>
/// <param name="Piece">As the yard has it.</param>
/// <param name="Seen">Where it was seen; empty where that is not known, or at two places.</param>
/// <param name="File">In which file; empty where it was not seen.</param>
/// <param name="ByBundle">Code of the bundle whose label stood for it; none where its own was seen.</param>
public sealed record CountedPiece(Piece Piece, string Seen, string File, Code ByBundle = default)
{
    /// <summary>True where it was cut up and so can't come back.</summary>
    public bool CutUp { get; init; }

    /// <summary>True where a label of it waits to be printed: if it never had one, no picture can show it.</summary>
    public bool Unprinted { get; init; }
}

/// <summary>A bin in a count.</summary>
/// <param name="Bin">As the yard has it.</param>
/// <param name="Seen">Where it was seen; empty where that is not known, or where it was not seen.</param>
public sealed record CountedBin(Bin Bin, string Seen);

/// <summary>A place that was counted.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Expected">Pieces that should lie there.</param>
/// <param name="Seen">Those of them that were seen there.</param>
public sealed record CountedPlace(string Name, int Expected, int Seen);

/// <summary>What a count says, before anything is changed.</summary>
public sealed record YardCount
{
    /// <summary>The yard's last change when it was reckoned.</summary>
    public required long ChangeNumber { get; init; }

    /// <summary>How it is meant.</summary>
    public required CountWish Wish { get; init; }

    /// <summary>Files that were read, and those that were not, with why.</summary>
    public required IReadOnlyList<CountedFile> Files { get; init; }

    /// <summary>Places that were counted, in the order of their names.</summary>
    public IReadOnlyList<CountedPlace> Places { get; init; } = [];

    /// <summary>Those of <see cref="Places"/> of which a file could not be read, so that nothing is said to be missing there.</summary>
    public IReadOnlyList<string> Unsure { get; init; } = [];

    /// <summary>Places where something was seen, or that were counted, that are new and written nearly like a known one.</summary>
    public IReadOnlyList<NewPlace> NewPlaces { get; init; } = [];

    /// <summary>Pieces where the yard says they are, or seen without saying where.</summary>
    public IReadOnlyList<CountedPiece> Right { get; init; } = [];

    /// <summary>Pieces elsewhere than the yard says.</summary>
    public IReadOnlyList<CountedPiece> Moved { get; init; } = [];

    /// <summary>Pieces that should have been seen and were not.</summary>
    public IReadOnlyList<CountedPiece> Missing { get; init; } = [];

    /// <summary>Pieces that were missing and were seen again.</summary>
    public IReadOnlyList<CountedPiece> Found { get; init; } = [];

    /// <summary>Pieces that should be gone but were seen: used, handed over, scrapped.</summary>
    public IReadOnlyList<CountedPiece> ShouldBeGone { get; init; } = [];

    /// <summary>Pieces that were seen at two places, with the places: nothing is changed of them.</summary>
    public IReadOnlyList<(Piece Piece, IReadOnlyList<string> Places)> Doubtful { get; init; } = [];

    /// <summary>Bins elsewhere than the yard says.</summary>
    public IReadOnlyList<CountedBin> BinsMoved { get; init; } = [];

    /// <summary>Bins that should have been seen and were not; nothing is changed of them.</summary>
    public IReadOnlyList<CountedBin> BinsNotSeen { get; init; } = [];

    /// <summary>Bundles elsewhere than the yard says: each goes there whole.</summary>
    public IReadOnlyList<(Bundle Bundle, string Seen)> BundlesMoved { get; init; } = [];

    /// <summary>Codes with the right check character that this yard does not know.</summary>
    public IReadOnlyList<(Code Code, string File)> Unknown { get; init; } = [];

    /// <summary>Labels that were printed blank and that nothing has taken yet.</summary>
    public IReadOnlyList<Code> Blanks { get; init; } = [];

    /// <summary>Labels that are void.</summary>
    public IReadOnlyList<Code> Voids { get; init; } = [];

    /// <summary>Pictures with the labels of two places or more, of which no place was taken.</summary>
    public IReadOnlyList<string> TwoPlaces { get; init; } = [];

    /// <summary>True where some labels were seen without saying where.</summary>
    public bool SomeWithoutPlace { get; init; }

    /// <summary>QR symbols and lines that are no labels of Offcuts.</summary>
    public int Foreign => Files.Sum(file => file.Foreign);

    /// <summary>Files that could not be read.</summary>
    public IEnumerable<CountedFile> Troubled => Files.Where(file => file.Trouble is not null);

    /// <summary>Pictures in which no label could be read.</summary>
    public IEnumerable<CountedFile> WithoutLabel => Files.Where(file => file is { Trouble: null, IsPicture: true, Labels.Count: 0 });

    /// <summary>Names of the places that count as counted today: not those of which a file could not be read, for they are to be counted again.</summary>
    public IEnumerable<string> PlacesCounted => Places.Select(place => place.Name).Except(Unsure, StringComparer.OrdinalIgnoreCase);

    /// <summary>Labels of pieces and bins that were seen, wherever.</summary>
    public int Seen => Right.Count + Moved.Count + Found.Count + ShouldBeGone.Count + Doubtful.Count;

    /// <summary>Bins that were seen.</summary>
    public int BinsSeen { get; init; }

    /// <summary>Pieces that come back where it is accepted.</summary>
    public IEnumerable<CountedPiece> ComeBack => Found.Concat(Wish.TakeBack ? ShouldBeGone : []).Where(counted => !counted.CutUp);
}
