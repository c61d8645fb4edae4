using CsCheck;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class CheckCharacterTests
{
    private const string Values = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    [Theory]
    [InlineData("A12425GABC1234002", 'M')] // the GRid standard's own example, A1-2425G-ABC1234002-M
    [InlineData("123AB", 'X')] // a published worked example of ISO/IEC 7064 MOD 37,36
    [InlineData("00000000C36D002B", 'K')] // an ISAN root
    [InlineData("9", 'J')] // a public test file
    [InlineData("RABD", 'A')] // the same file
    [InlineData("WP8Z0", '9')] // the same file
    public void Published_check_characters_are_reached(string body, char check)
    {
        CheckCharacter.Of(body).Should().Be(check);
        CheckCharacter.Fits(body + check).Should().BeTrue();
    }

    // The known weakness of ISO/IEC 7064 MOD 37,36: these neighbours can be swapped unseen.
    [Fact]
    public void IJ_and_JI_share_the_check_character_0()
    {
        CheckCharacter.Of("IJ").Should().Be('0');
        CheckCharacter.Of("JI").Should().Be('0');
    }

    /// <summary>Any single wrong character anywhere, the check character included, is caught.</summary>
    [Fact]
    public void A_single_wrong_character_is_always_caught() =>
        Gen.String[Gen.Char[Values], 1, 12].Sample(body =>
        {
            var whole = body + CheckCharacter.Of(body);
            if (!CheckCharacter.Fits(whole)) return false;
            for (var at = 0; at < whole.Length; at++)
            {
                foreach (var wrong in Values.Where(value => value != whole[at]))
                    if (CheckCharacter.Fits(whole[..at] + wrong + whole[(at + 1)..])) return false;
            }

            return true;
        });

    /// <summary>The standard's own way to verify agrees: run over all characters without the last doubling, the result is 1.</summary>
    [Fact]
    public void The_standards_own_verification_agrees() =>
        Gen.String[Gen.Char[Values], 2, 12].Sample(whole =>
        {
            var product = 36;
            for (var i = 0; i < whole.Length; i++)
            {
                product = (product + Values.IndexOf(whole[i])) % 36;
                if (i == whole.Length - 1) break;
                if (product == 0) product = 36;
                product = product * 2 % 37;
            }

            return CheckCharacter.Fits(whole) == (product == 1);
        });

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData("12a")]
    [InlineData("1 2")]
    public void What_has_no_body_or_strange_characters_does_not_fit(string whole) => CheckCharacter.Fits(whole).Should().BeFalse();

    [Fact]
    public void A_body_with_strange_characters_is_a_bug()
    {
        var asking = () => CheckCharacter.Of("ab");
        asking.Should().Throw<ArgumentException>();
    }
}
