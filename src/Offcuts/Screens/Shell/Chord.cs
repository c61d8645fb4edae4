using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace Offcuts.Screens;

/// <summary>Between the keys as the places name them and as the terminal sends them.</summary>
internal static class Chord
{
    /// <summary>The key that a chord names. Throws for a name that is none: a slip in a place's list.</summary>
    public static Key ToKey(string chord)
    {
        var name = chord
            .Replace("Up", "CursorUp", StringComparison.Ordinal)
            .Replace("PageCursorUp", "PageUp", StringComparison.Ordinal)
            .Replace("Down", "CursorDown", StringComparison.Ordinal)
            .Replace("PageCursorDown", "PageDown", StringComparison.Ordinal);
        return Key.TryParse(name, out var key) ? key : throw new ArgumentException($"{chord} names no key", nameof(chord));
    }

    /// <summary>True for the keys by which a line is typed and corrected; they go to the line.</summary>
    public static bool Edits(Key key)
    {
        if (key.IsAlt) return false;
        if (key.IsCtrl) return key.NoCtrl.NoShift.KeyCode is KeyCode.CursorLeft or KeyCode.CursorRight or KeyCode.Backspace or KeyCode.Delete;
        return Typed(key) is not null
            || key.NoShift.KeyCode is KeyCode.Backspace or KeyCode.Delete or KeyCode.CursorLeft or KeyCode.CursorRight or KeyCode.Home or KeyCode.End;
    }

    /// <summary>The character that a key types, or none.</summary>
    public static string? Typed(Key key)
    {
        if (key.IsCtrl || key.IsAlt || key.NoShift.KeyCode is KeyCode.Enter or KeyCode.Tab or KeyCode.Esc or KeyCode.Backspace or KeyCode.Delete) return null;
        return key.TryGetPrintableRune(out var rune) && rune.Value >= ' ' ? rune.ToString() : null;
    }
}
