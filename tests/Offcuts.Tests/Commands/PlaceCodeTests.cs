using System.Text.Json;
using Offcuts.Store;
using Offcuts.Tests.Screens;

namespace Offcuts.Tests.Commands;

/// <summary>Codes of places and bundles, wherever a code is asked for. The yard is invented.</summary>
[Collection(OnScreen.Name)]
public sealed class PlaceCodeTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string[] _pieces;
    private readonly string _place;
    private readonly string _bundle;

    public PlaceCodeTests()
    {
        _yard.Must("add", "2x4 8', 8', 6' @north rack");
        _pieces = [.. _yard.Must("list").Lines.Skip(1).Take(3).Select(line => line[..8])];
        _yard.Must("place", "label", "north rack");
        _yard.Must("bundle", "new", _pieces[0], _pieces[1], "--name", "studs");
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        (_place, _bundle) = (yard.Places().Single().Code.ToString(), yard.Bundles().Single().Code.ToString());
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Show_tells_what_lies_at_a_place_and_what_is_in_a_bundle()
    {
        var place = _yard.Must("show", _place).Lines;
        place.Should().Contain($"{_place}   place   north rack").And.Contain("3 pieces and 0 bins lie there; counted never. See them with: offcuts list \"@north rack\"");
        place.SkipWhile(line => line != "History:").Should().Contain(line => line.Contains("labelled the place north rack"));

        var bundle = _yard.Must("show", _bundle).Lines;
        bundle.Should().Contain($"{_bundle}   bundle   studs   2 x 2x4").And.Contain("at north rack").And.Contain(line => line.StartsWith($"  {_pieces[0]}  2x4  8'"));
        _yard.Must("show", _bundle, "--json").Out.Should().Contain("\"bundles\": [");
        _yard.Must("show", _place, "--json").Out.Should().Contain("\"places\": [");
    }

    [Fact]
    public void Change_moves_a_bundle_as_a_whole_and_says_what_a_place_is()
    {
        _yard.Must("change", _bundle, "--place", "trailer");

        _yard.Must("list", "@trailer").Out.Should().Contain(_pieces[0]).And.Contain(_pieces[1]).And.NotContain(_pieces[2]);
        _yard.Run("change", _bundle, "--nails", "yes").Error.Should().Be($"{_bundle} is a bundle: as a whole it is only moved, with --place; its pieces are changed by their own codes, or once it is opened with: offcuts bundle open\n");
        _yard.Run("change", _place, "--place", "trailer").Error.Should().Be("that is the label of the place north rack: a place has nothing to be changed; what lies there is changed by its own code\n");
    }

    [Fact]
    public void A_code_written_with_its_gap_needs_no_quotes_and_neither_has_a_place_of_two_words()
    {
        _yard.Must(["bundle", "move", .. _bundle.Split(' '), "south", "wall"]).Out.Should().Be($"Put the bundle {_bundle} at south wall\n");
        _yard.Must(["label", "preview", .. _bundle.Split(' ')]).Out.Should().Contain(_bundle);
        _yard.Must(["bundle", "open", .. _bundle.Split(' ')]).Out.Should().StartWith($"Opened the bundle {_bundle}: 2 pieces");
        _yard.Run(["bundle", "move", .. _bundle.Split(' ')]).Error.Should().Be("say where they lie now\n");
    }

    [Fact]
    public void A_bundle_is_moved_and_opened_by_its_name_too_and_of_two_of_one_name_none_is_guessed()
    {
        _yard.Must("bundle", "move", "Studs", "south", "wall").Out.Should().Be($"Put the bundle {_bundle} at south wall\n");
        _yard.Run("bundle", "move", "stud", "trailer").Error.Should().StartWith("no bundle is named stud, and it is no code: ").And.EndWith("; see: offcuts bundle list\n");
        _yard.Run("bundle", "move", "studs").Status.Should().Be(2, "no place is said");

        _yard.Must("add", "2x4 6' 1 x2");
        string[] more = [.. JsonDocument.Parse(_yard.Must("list", "--at-least", "6'", "--json").Out).RootElement.GetProperty("pieces").EnumerateArray()
            .Where(piece => piece.GetProperty("length_mm").GetDecimal() == 73 * 25.4m).Select(piece => piece.GetProperty("code").GetString()!)];
        _yard.Must(["bundle", "new", .. more, "--name", "studs"]);
        _yard.Run("bundle", "move", "studs", "trailer").Error.Should().StartWith("several bundles are named studs; say which by its code: ").And.Contain(_bundle);

        _yard.Must(["bundle", "open", .. _bundle.Split(' ')]);
        _yard.Must("bundle", "open", "studs").Out.Should().Contain("2 pieces", "the one that is still whole");
    }

    [Fact]
    public void A_code_mistyped_with_its_gap_is_told_to_be_one_and_of_a_name_all_words_are_told()
    {
        // Of characters of which only the last is another one never two fit.
        var wrong = _bundle[..^1] + (_bundle[^1] == '2' ? '4' : '2');

        _yard.Run(["bundle", "open", .. wrong.Split(' ')]).Error.Should().StartWith($"no bundle is named {wrong}, and it is no code: ").And.Contain("its check character does not fit");
        _yard.Run(["bundle", "move", .. wrong.Split(' '), "trailer"]).Error.Should().StartWith($"no bundle is named {wrong}, and it is no code: ").And.Contain("its check character does not fit");
        _yard.Run("bundle", "open", "long", "studz").Error.Should().StartWith("no bundle is named long studz, and it is no code: ");
        _yard.Run("bundle", "open", "studs", "north").Error.Should().StartWith("no bundle is named studs north, ");
    }

    [Fact]
    public void Where_a_name_may_end_at_one_word_or_another_no_bundle_is_guessed()
    {
        _yard.Must("add", "2x4 6' 1 x2");
        string[] more = [.. JsonDocument.Parse(_yard.Must("list", "--at-least", "6'", "--json").Out).RootElement.GetProperty("pieces").EnumerateArray()
            .Where(piece => piece.GetProperty("length_mm").GetDecimal() == 73 * 25.4m).Select(piece => piece.GetProperty("code").GetString()!)];
        var told = _yard.Must(["bundle", "new", .. more, "--name", "studs north"]).Out;

        var refused = _yard.Run("bundle", "move", "studs", "north", "rack");
        refused.Status.Should().NotBe(0);
        refused.Error.Should().StartWith("studs north rack may begin with more than one bundle's name; say which by its code: ").And.Contain($"{_bundle} (studs)").And.Contain("(studs north)");

        _yard.Must("bundle", "move", "studs", "north rack").Out.Should().Be($"Put the bundle {_bundle} at north rack\n", "the words in quotes are the place");
        var other = _yard.Must("bundle", "move", "studs north", "rack").Out;
        told.Should().Contain(other["Put the bundle ".Length..][..8], "and here they are the name");
        _yard.Must("bundle", "move", "studs", "trailer").Out.Should().Be($"Put the bundle {_bundle} at trailer\n", "nothing is left for a place behind the longer name");
        _yard.Must("bundle", "open", "studs", "north").Out.Should().Contain("2 pieces");
    }

    [Fact]
    public void Handed_over_in_a_hurry_it_is_a_gift_to_nobody_named_and_in_the_ledger()
    {
        _yard.Must("mark", "handed-over", _pieces[2]).Lines.Should().Equal($"Gave {_pieces[2]}, 2x4 to nobody named");

        _yard.Must("hand", "list").Lines[0].Should().Contain("given to nobody named: 1 thing");
        _yard.Must("ledger").Out.Should().Contain("given: 1 thing");
        _yard.Must("undo");
        _yard.Must("list").Out.Should().Contain(_pieces[2]);
    }

    [Fact]
    public void A_place_of_which_a_picture_could_not_be_read_is_not_counted_today()
    {
        var folder = Directory.CreateDirectory(Path.Combine(_yard.Folder, "north rack")).FullName;
        File.WriteAllText(Path.Combine(folder, "seen.txt"), $"{_pieces[0]}\n");
        File.WriteAllBytes(Path.Combine(folder, "broken.jpg"), [0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 0, 0]);

        _yard.Run("count", folder, "--accept").Out.Should().Contain("broken.jpg");

        _yard.Must("place", "list").Lines[^1].Should().StartWith("north rack").And.Contain("never");
        File.Delete(Path.Combine(folder, "broken.jpg"));
        _yard.Must("count", folder, "--accept", "--partly");
        _yard.Must("place", "list").Lines[^1].Should().Contain("today");
    }

    [Fact]
    public void The_key_that_goes_to_a_code_goes_to_a_place_and_to_a_bundle()
    {
        ScreenRun.On(80, 24, run =>
        {
            var (place, bundle) = (run.Yard.Places().Single().Code, run.Yard.Bundles().Single().Code);
            run.Press("Ctrl+F").Type(place.Text);
            run.Text.Should().Contain($"✓ {place}: the place north rack, 3 pieces");
            run.Press("Enter");
            run.Shell.State.Place.Should().Be(Offcuts.Screens.Place.Yard);
            run.Shell.State.Yard.Line.Text.Should().Be("@north rack");

            run.Press("F7").Scan(bundle);
            run.Shell.State.Place.Should().Be(Offcuts.Screens.Place.Count);
            run.Shell.State.Count.Label!.Code.Should().Be(bundle);
        }, yard =>
        {
            var catalogue = new UseCases.CataloguePieces(yard);
            var saved = catalogue.Save(catalogue.Read(["2x4 8', 8', 6' @north rack"]).Value).Value;
            var labels = new UseCases.ChangeLabels(yard);
            labels.LabelPlaces(["north rack"]).Ok.Should().BeTrue();
            labels.Strap([saved.Pieces[0].Code, saved.Pieces[1].Code], "studs", null).Ok.Should().BeTrue();
        });
    }
}
