using System.Collections.Frozen;
using System.Text;

namespace Offcuts.Print;

/// <summary>
/// Joins a letter and the accent typed after it into the one character that fonts have a drawing for. The program runs
/// without the platform's own tables, whose normalization then does nothing outside ASCII.
/// </summary>
/// <remarks>The pairs are those of the Unicode Standard's canonical compositions for Latin letters.</remarks>
internal static class Accents
{
    private static readonly FrozenDictionary<(char Letter, char Accent), char> Joined = new (char Accent, string Pairs)[]
    {
        ('\u0300', "AÀEÈIÌOÒUÙaàeèiìoòuùNǸnǹWẀwẁYỲyỳ"),
        ('\u0301', "AÁEÉIÍOÓUÚYÝaáeéiíoóuúyýCĆcćLĹlĺNŃnńRŔrŕSŚsśZŹzźGǴgǵ"),
        ('\u0302', "AÂEÊIÎOÔUÛaâeêiîoôuûCĈcĉGĜgĝHĤhĥJĴjĵSŜsŝWŴwŵYŶyŷ"),
        ('\u0303', "AÃNÑOÕaãnñoõIĨiĩUŨuũEẼeẽYỸyỹ"),
        ('\u0304', "AĀaāEĒeēIĪiīOŌoōUŪuū"),
        ('\u0306', "AĂaăEĔeĕGĞgğIĬiĭOŎoŏUŬuŭ"),
        ('\u0307', "CĊcċEĖeėGĠgġIİZŻzż"),
        ('\u0308', "AÄEËIÏOÖUÜaäeëiïoöuüyÿYŸ"),
        ('\u030a', "AÅaåUŮuů"),
        ('\u030b', "OŐoőUŰuű"),
        ('\u030c', "CČcčDĎdďEĚeěNŇnňRŘrřSŠsšTŤtťZŽzžGǦgǧLĽlľ"),
        ('\u0326', "SȘsșTȚtț"),
        ('\u0327', "CÇcçGĢKĶkķLĻlļNŅnņRŖrŗSŞsşTŢtţ"),
        ('\u0328', "AĄaąEĘeęIĮiįUŲuų"),
    }.SelectMany(row => row.Pairs.Chunk(2).Select(pair => (Key: (pair[0], row.Accent), Value: pair[1])))
        .ToFrozenDictionary(entry => entry.Key, entry => entry.Value);

    /// <summary>The text with such pairs joined; anything else as it was.</summary>
    public static string Join(string text)
    {
        if (!text.Any(c => c is >= '\u0300' and <= '\u036f')) return text;
        var joined = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (joined.Length > 0 && Joined.TryGetValue((joined[^1], c), out var one)) joined[^1] = one;
            else joined.Append(c);
        }

        return joined.ToString();
    }
}
