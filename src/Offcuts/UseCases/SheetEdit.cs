namespace Offcuts.UseCases;

/// <summary>A sheet of a wall or a system as somebody typed it, over the one that they opened.</summary>
/// <param name="Text">What was typed.</param>
/// <param name="Of">Name of the sheet that was opened; none for a new one.</param>
/// <param name="Opened">The text it had then; empty for a new one.</param>
public sealed record SheetEdit(string Text, string? Of = null, string Opened = "");
