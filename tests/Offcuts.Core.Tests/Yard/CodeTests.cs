using CsCheck;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class CodeTests
{
    private static readonly Gen<Code> AnyCode = Gen.Int.Select(seed =>
    {
        var luck = new Random(seed);
        return Code.Draw(luck.Next);
    });

    /// <summary>Each character of a code is from the alphabet, the check character too, and it is drawn and checked right.</summary>
    [Fact]
    public void A_drawn_code_holds_only_characters_of_the_alphabet_the_check_character_too() =>
        AnyCode.Sample(code =>
            code.Text.Length == 7 && code.Text.All(Code.Alphabet.Contains) && CheckCharacter.Fits(code.Text) && !code.IsNone);

    [Fact]
    public void No_two_characters_of_the_alphabet_look_alike()
    {
        foreach (var lookalikes in new[] { "0OQD", "1IL", "2Z", "5S", "8B", "6G", "UV" })
            Code.Alphabet.Count(lookalikes.Contains).Should().BeLessThanOrEqualTo(1, "of {0} at most one is in", lookalikes);
        Code.Alphabet.Distinct().Should().HaveCount(24);
    }

    [Fact]
    public void A_body_whose_check_character_looks_like_another_is_drawn_again()
    {
        bool Fits(int last) => Code.Alphabet.Contains(CheckCharacter.Of("22222" + Code.Alphabet[last]));
        var lasts = Enumerable.Range(0, Code.Alphabet.Length).ToArray();
        var (bad, good) = (lasts.First(last => !Fits(last)), lasts.Last(Fits));
        var luck = new Queue<int>([0, 0, 0, 0, 0, bad, 0, 0, 0, 0, 0, good]);

        var code = Code.Draw(_ => luck.Dequeue());

        code.Text[..6].Should().Be("22222" + Code.Alphabet[good]);
        luck.Should().BeEmpty("the first body was drawn and thrown away");
    }

    [Theory]
    [InlineData("2X4")]
    [InlineData("NEW")]
    public void A_code_that_a_typed_line_would_take_for_lumber_or_for_a_new_piece_is_drawn_again(string taken)
    {
        bool Fits(string body) => Code.Alphabet.Contains(CheckCharacter.Of(body));
        int[] Drawn(string body) => [.. body.Select(character => Code.Alphabet.IndexOf(character))];
        var drawn = Code.Alphabet.Select(last => $"{taken}22{last}").First(Fits);
        var other = Code.Alphabet.Select(last => $"2XA22{last}").First(Fits);
        var luck = new Queue<int>([.. Drawn(drawn), .. Drawn(other)]);

        Code.Draw(_ => luck.Dequeue()).Text[..6].Should().Be(other);
    }

    /// <summary>The QR text has 15 characters of QR's alphanumeric set: version 1 level Q holds 16 (ISO/IEC 18004).</summary>
    [Fact]
    public void The_QR_text_fits_version_1_level_Q() =>
        AnyCode.Sample(code =>
            code.QrText == "OFFCUTS:" + code.Text && code.QrText.Length <= 16
            && code.QrText.All("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:".Contains));

    /// <summary>However a code is typed or scanned, it is read as the same code.</summary>
    [Fact]
    public void A_code_is_read_in_every_way_it_is_typed() =>
        AnyCode.Sample(code =>
            new[] { code.Text, code.ToString(), code.QrText, code.Text.ToLowerInvariant(), $"  {code} ", code.Text.Insert(3, "-"), "offcuts:" + code.Text }
                .All(typed => Code.Parse(typed).Value == code));

    /// <summary>Any single wrong character of the alphabet is caught by the check character.</summary>
    [Fact]
    public void A_code_with_one_wrong_character_is_refused() =>
        AnyCode.Sample(code =>
        {
            for (var at = 0; at < code.Text.Length; at++)
            {
                foreach (var wrong in Code.Alphabet.Where(value => value != code.Text[at]))
                {
                    var read = Code.Parse(code.Text[..at] + wrong + code.Text[(at + 1)..]);
                    if (read.Ok || read.Fault.Sentence != "one character of this code is wrong: its check character does not fit") return false;
                }
            }

            return true;
        });

    [Theory]
    [InlineData("", 0, "a code has 7 characters, like the two groups on a label")]
    [InlineData("222", 0, "a code has 7 characters, like the two groups on a label")]
    [InlineData("22222222", 0, "a code has 7 characters, like the two groups on a label")]
    [InlineData("22O 2222", 3, "no code has \"O\" in it; codes leave out the characters that look like others")]
    [InlineData("offcuts:2!", 10, "no code has \"!\" in it; codes leave out the characters that look like others")]
    [InlineData("22\u001b", 3, "no code has \"\\u001b\" in it; codes leave out the characters that look like others")]
    public void What_is_no_code_is_refused(string text, int column, string sentence)
    {
        var fault = Code.Parse(text).Fault;
        fault.Sentence.Should().Be(sentence);
        fault.Column.Should().Be(column);
    }

    [Fact]
    public void A_code_is_written_in_two_groups_and_none_is_empty()
    {
        var code = Code.Parse(Made("K7F3MX")).Value;
        code.ToString().Should().Be($"K7F 3MX{CheckCharacter.Of("K7F3MX")}");
        default(Code).IsNone.Should().BeTrue();
        default(Code).ToString().Should().BeEmpty();
        default(Code).Text.Should().BeEmpty();
    }

    [Fact]
    public void Codes_sort_by_their_characters() =>
        new[] { Code.Parse(Made("A22222")).Value, Code.Parse(Made("9A2222")).Value }.Order().Select(code => code.Text[0]).Should().Equal('9', 'A');

    private static string Made(string body) => body + CheckCharacter.Of(body);
}
