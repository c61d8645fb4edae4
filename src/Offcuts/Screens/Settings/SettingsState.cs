using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The settings on the screen.</summary>
internal sealed record SettingsState
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>Which setting is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>The settings as the line would make them, or why it can't be read; nothing while it is empty.</summary>
    public Result<YardSettings>? Reading { get; init; }

    /// <summary>True once Enter was pressed on a line that can't be read.</summary>
    public bool Tried { get; init; }

    /// <summary>What another program set meanwhile where the line is about the same; told before the line is set. Empty where nothing was.</summary>
    public string Overtaken { get; init; } = "";

    /// <summary>The chosen setting, or nothing before the yard is read.</summary>
    public SettingLine? Setting => Chosen < Yard.SettingLines.Count ? Yard.SettingLines[Chosen] : null;
}
