using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace Offcuts.Screens;

/// <summary>
/// The look of each tone. Ordinary text takes the terminal's own two colours, so it reads on a light and on a dark ground;
/// the few colours are of the sixteen that every theme chooses for itself. Without colour only weight and reversal are left.
/// </summary>
/// <param name="colour">False honours <c>NO_COLOR</c>.</param>
/// <param name="darkGround">
/// Without colour a QR symbol can be dark on light only by reversal on a dark ground, and by none on a light one.
/// </param>
/// <param name="ascii">True draws nothing but ASCII.</param>
internal sealed class Palette(bool colour, bool darkGround, bool ascii = false)
{
    /// <summary>True where nothing but ASCII is drawn.</summary>
    public bool Ascii => ascii;

    /// <summary>A text as it is drawn, as wide as before.</summary>
    public string Drawn(string text) => ascii ? PlainLetters.Of(text) : text;

    /// <summary>The look of a tone.</summary>
    public Attribute Of(Tone tone) => tone switch
    {
        Tone.Strong => Own(TextStyle.Bold),
        Tone.Soft => Own(TextStyle.Faint),
        Tone.Good => colour ? On(ColorName16.Green, TextStyle.None) : Own(TextStyle.None),
        Tone.Fault => colour ? On(ColorName16.Red, TextStyle.Bold) : Own(TextStyle.Bold),
        Tone.Caution => colour ? On(ColorName16.Magenta, TextStyle.None) : Own(TextStyle.Underline),
        Tone.Chosen => Own(TextStyle.Reverse),
        Tone.Paper when colour => new Attribute(new Color(ColorName16.Black), new Color(ColorName16.White)),
        Tone.Paper => Own(darkGround ? TextStyle.Reverse : TextStyle.None),
        _ => Own(TextStyle.None),
    };

    /// <summary>A scheme in which every role has an attribute of ours, so that none is derived with a colour of its own.</summary>
    public Scheme Scheme
    {
        get
        {
            var (plain, chosen, line) = (Of(Tone.Plain), Of(Tone.Chosen), Own(TextStyle.Underline));
            return new Scheme(plain)
            {
                HotNormal = plain,
                Focus = chosen,
                HotFocus = chosen,
                Active = chosen,
                HotActive = chosen,
                Highlight = plain,
                Editable = line,
                ReadOnly = line,
                Disabled = Of(Tone.Soft),
            };
        }
    }

    private static Attribute Own(TextStyle style) => new(Color.None, Color.None, style);

    private static Attribute On(ColorName16 name, TextStyle style) => new(new Color(name), Color.None, style);
}
