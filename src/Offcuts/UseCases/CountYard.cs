using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>
/// Holds what was seen against what the yard says. Nothing is changed until the count is accepted; then everything it says is one change.
/// </summary>
public sealed class CountYard(YardFile yard, DateOnly today)
{
    /// <summary>What these files say. A yard that changes meanwhile makes the count void when it is to be accepted.</summary>
    public Result<YardCount> Reckon(IReadOnlyList<CountedFile> files, CountWish wish)
    {
        if (wish is { Whole: true, Partly: true }) return CountFaults.WholeAndPartly();
        var faults = new List<Fault>();
        PieceRules.CheckText(faults, "place", wish.At, PieceRules.LongestName);
        return faults.Count > 0 ? Result<YardCount>.Fail(faults) : new Reckoning(yard, files, wish with { At = PieceRules.PlaceIn(wish.At) }).Made();
    }

    /// <summary>Makes the yard what the count says, as one change; tells what was done.</summary>
    public Result<string> Accept(YardCount count)
    {
        if (count.Seen + count.BinsSeen == 0) return CountFaults.NothingSeen();
        return yard.ChangeSince(count.ChangeNumber, Told(count), work =>
        {
            foreach (var (bundle, seen) in count.BundlesMoved) work.MoveBundle(bundle.Code, seen);

            // What lies where the yard says, or at two places, is not carried along by its bundle; it leaves that.
            var carried = count.BundlesMoved.SelectMany(moved => moved.Bundle.Pieces).ToHashSet();
            foreach (var piece in count.Right.Select(right => right.Piece).Concat(count.Doubtful.Select(doubtful => doubtful.Piece)).Where(piece => carried.Contains(piece.Code))) work.Update(piece);
            foreach (var moved in count.Moved.Where(moved => moved.ByBundle.IsNone)) work.Update(moved.Piece with { Place = moved.Seen });
            foreach (var back in count.ComeBack) work.Update(back.Piece with { State = PieceState.InYard, Place = back.Seen.Length > 0 ? back.Seen : back.Piece.Place });
            foreach (var missing in count.Missing) work.Update(missing.Piece with { State = PieceState.Missing, ReservedFor = "" });
            foreach (var bin in count.BinsMoved) work.Put(bin.Bin with { Place = bin.Seen });
            foreach (var place in count.PlacesCounted) work.PlaceCounted(place, today);
        }).Then<string>(entry => entry.What);
    }

    private static string Told(YardCount count)
    {
        // A place of which a file could not be read does not count as counted, and so is not said to be.
        string[] counted = [.. count.PlacesCounted];
        var where = count.Wish.Whole && counted.Length == count.Places.Count ? "the whole yard" : counted.Length switch
        {
            0 => "labels",
            <= 3 => string.Join(", ", counted),
            _ => Words.Count(counted.Length, "place"),
        };
        string[] parts =
        [
            $"{count.Seen + count.BinsSeen} seen",
            Part(count.Moved.Count + count.BinsMoved.Count, "elsewhere"),
            Part(count.Missing.Count, "missing"),
            Part(count.ComeBack.Count(), "back"),
        ];
        return $"counted {where}: {string.Join(", ", parts.Where(part => part.Length > 0))}";
        static string Part(int count, string what) => count == 0 ? "" : $"{count} {what}";
    }

    /// <summary>One count while it is made.</summary>
    private sealed class Reckoning
    {
        private readonly IReadOnlyList<CountedFile> _files;
        private readonly CountWish _wish;
        private readonly long _changeNumber;
        private readonly Dictionary<Code, Piece> _pieces;
        private readonly Dictionary<Code, Bin> _bins;
        private readonly Dictionary<Code, Bundle> _bundles;
        private readonly Dictionary<Code, string> _placeOf;
        private readonly HashSet<Code> _blanks;
        private readonly HashSet<Code> _voids;
        private readonly HashSet<Code> _unprinted;
        private readonly HashSet<Code> _parents;
        private readonly HashSet<string> _known;
        private readonly HashSet<string> _counted = new(StringComparer.OrdinalIgnoreCase);
        private readonly HashSet<string> _unsure = new(StringComparer.OrdinalIgnoreCase);
        private readonly Dictionary<string, HashSet<string>> _seenFrom = [];
        private readonly List<string> _twoPlaces = [];
        private readonly Dictionary<Code, Sighting> _seen = [];

        public Reckoning(YardFile yard, IReadOnlyList<CountedFile> files, CountWish wish)
        {
            (_files, _wish, _changeNumber) = (files, wish, yard.ChangeNumber);
            _pieces = yard.Pieces(onHandOnly: false).ToDictionary(piece => piece.Code);
            _bins = yard.Bins().ToDictionary(bin => bin.Code);
            _bundles = yard.Bundles().ToDictionary(bundle => bundle.Code);
            var places = yard.Places();
            _placeOf = places.Where(place => !place.Code.IsNone).ToDictionary(place => place.Code, place => place.Name);
            _blanks = [.. yard.BlankCodes()];
            _voids = [.. yard.VoidCodes()];
            _unprinted = [.. yard.LabelQueue()];
            _parents = [.. _pieces.Values.Where(piece => !piece.CutFrom.IsNone && piece.State != PieceState.Scrapped).Select(piece => piece.CutFrom)];
            _known = new HashSet<string>(places.Select(place => place.Name), StringComparer.OrdinalIgnoreCase);
            _known.UnionWith(_pieces.Values.Where(piece => piece.OnHand).Select(piece => piece.Place));
            _known.UnionWith(_bins.Values.Select(bin => bin.Place));
            _known.Remove("");
        }

        public YardCount Made()
        {
            if (_wish.At.Length > 0) _counted.Add(Known(_wish.At));
            foreach (var file in _files.Where(file => file.Trouble is null)) See(file);
            SeeInBundles();
            Doubt();
            var (right, moved, found, gone) = (new List<CountedPiece>(), new List<CountedPiece>(), new List<CountedPiece>(), new List<CountedPiece>());
            var doubtful = new List<(Piece, IReadOnlyList<string>)>();
            foreach (var (code, sighting) in _seen)
            {
                if (!_pieces.TryGetValue(code, out var piece)) continue;
                var counted = new CountedPiece(piece, sighting.Places.Count == 1 ? sighting.Place : "", sighting.File, sighting.ByBundle) { CutUp = _parents.Contains(code) };
                if (piece.State == PieceState.Missing) found.Add(counted);
                else if (!piece.OnHand) gone.Add(counted);
                else if (sighting.Places.Count > 1) doubtful.Add((piece, [.. sighting.Places.Order(StringComparer.OrdinalIgnoreCase)]));
                else if (sighting.Place.Length > 0 && !Same(sighting.Place, piece.Place)) moved.Add(counted);
                else right.Add(counted);
            }

            return new YardCount
            {
                ChangeNumber = _changeNumber,
                Wish = _wish,
                Files = _files,
                Places = [.. _counted.Order(StringComparer.OrdinalIgnoreCase).Select(Place)],
                Unsure = [.. _counted.Where(_unsure.Contains).Order(StringComparer.OrdinalIgnoreCase)],
                NewPlaces = NewPlace.Among(_counted.Concat(_seen.Values.SelectMany(sighting => sighting.Places)).Order(StringComparer.OrdinalIgnoreCase), _known),
                Right = right,
                Moved = moved,
                Missing = _wish.Partly ? [] : [.. _pieces.Values.Where(piece => piece.OnHand && Due(piece.Place) && !_seen.ContainsKey(piece.Code)).Select(piece => new CountedPiece(piece, "", "") { Unprinted = _unprinted.Contains(piece.Code) })],
                Found = found,
                ShouldBeGone = gone,
                Doubtful = doubtful,
                BinsMoved = [.. BinsSeen().Where(bin => bin.Seen.Length > 0 && !Same(bin.Seen, bin.Bin.Place))],
                BinsNotSeen = _wish.Partly ? [] : [.. _bins.Values.Where(bin => Due(bin.Place) && !_seen.ContainsKey(bin.Code)).Select(bin => new CountedBin(bin, ""))],
                BundlesMoved = [.. _seen.Where(one => _bundles.TryGetValue(one.Key, out var bundle) && bundle.IsWhole && one.Value.Places.Count == 1 && !Same(one.Value.Place, bundle.Place)).Select(one => (_bundles[one.Key], one.Value.Place))],
                Unknown = [.. _seen.Where(one => IsUnknown(one.Key)).Select(one => (one.Key, one.Value.File))],
                Blanks = [.. _seen.Keys.Where(_blanks.Contains)],
                Voids = [.. _seen.Keys.Where(_voids.Contains)],
                TwoPlaces = _twoPlaces,
                SomeWithoutPlace = _seen.Any(one => one.Value.Places.Count == 0 && !IsUnknown(one.Key)),
                BinsSeen = BinsSeen().Count(),
            };
        }

        private bool IsUnknown(Code code) => !_pieces.ContainsKey(code) && !_bins.ContainsKey(code) && !_bundles.ContainsKey(code) && !_placeOf.ContainsKey(code) && !_blanks.Contains(code) && !_voids.Contains(code);

        private IEnumerable<CountedBin> BinsSeen() => _seen.Where(one => _bins.ContainsKey(one.Key)).Select(one => new CountedBin(_bins[one.Key], one.Value.Places.Count == 1 ? one.Value.Place : ""));

        private bool Due(string place) => !_unsure.Contains(place) && (_wish.Whole ? _files.All(file => file.Trouble is null) : _counted.Contains(place));

        private CountedPlace Place(string name)
        {
            var here = _pieces.Values.Where(piece => piece.OnHand && Same(piece.Place, name)).ToArray();
            return new CountedPlace(name, here.Length, here.Count(piece => _seen.TryGetValue(piece.Code, out var sighting) && (sighting.Places.Count == 0 || sighting.Places.Contains(name))));
        }

        // What was not seen may be in a file that could not be read. That is of the place that was wished or of its folder's, or else of any
        // whose label is in a file beside it.
        private void Doubt()
        {
            if (_wish.Whole && _files.Any(file => file.Trouble is not null)) _unsure.UnionWith(_counted);
            foreach (var file in _files.Where(file => file.Trouble is not null))
            {
                if (Begins(file) is { Length: > 0 } place) _unsure.Add(place);
                if (_seenFrom.TryGetValue(Beside(file.Name), out var places)) _unsure.UnionWith(places);
            }
        }

        private static string Beside(string file) => Path.GetDirectoryName(Path.GetFullPath(file)) ?? "";

        private string Begins(CountedFile file)
        {
            var folder = PieceRules.PlaceIn(file.Folder);
            return _wish.At.Length > 0 ? Known(_wish.At) : _known.Contains(folder) ? Known(folder) : "";
        }

        // A place's label in the picture says where it is; else the wish; else the folder, where its name is that of a place.
        private void See(CountedFile file)
        {
            var here = Begins(file);
            if (file.IsPicture)
            {
                string[] labels = [.. file.Labels.Where(label => _placeOf.ContainsKey(label.Code)).Select(label => _placeOf[label.Code]).Distinct()];
                if (labels.Length == 1) here = labels[0];
                else if (labels.Length > 1) _twoPlaces.Add(file.Name);
            }

            var (line, beside) = (0, Beside(file.Name));
            foreach (var label in file.Labels)
            {
                if (label.Line != line) (line, here) = (label.Line, Known(label.Place));
                if (_placeOf.TryGetValue(label.Code, out var place)) here = file.IsPicture ? here : place;
                else Add(label.Code, here, file.Name, beside);
            }
        }

        private void Add(Code code, string place, string file, string beside)
        {
            if (!_seen.TryGetValue(code, out var sighting)) _seen.Add(code, sighting = new Sighting(file));
            if (place.Length == 0) return;
            sighting.Places.Add(place);
            if (IsUnknown(code)) return;
            _counted.Add(place);
            if (!_seenFrom.TryGetValue(beside, out var places)) _seenFrom.Add(beside, places = new HashSet<string>(StringComparer.OrdinalIgnoreCase));
            places.Add(place);
        }

        // The label of a whole bundle stands for what is in it, unless where a piece is was seen by itself.
        private void SeeInBundles()
        {
            foreach (var (code, sighting) in _seen.ToArray())
            {
                if (!_bundles.TryGetValue(code, out var bundle)) continue;
                foreach (var piece in bundle.Pieces)
                    if (!_seen.TryGetValue(piece, out var own) || (own.Places.Count == 0 && sighting.Places.Count > 0)) _seen[piece] = new Sighting(own?.File ?? sighting.File) { ByBundle = code, Places = sighting.Places };
            }
        }

        private string Known(string name) => _known.TryGetValue(name, out var known) ? known : name;

        private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

        private sealed record Sighting(string File)
        {
            public Code ByBundle { get; init; }

            public HashSet<string> Places { get; init; } = new(StringComparer.OrdinalIgnoreCase);

            public string Place => Places.FirstOrDefault() ?? "";
        }
    }
}
