namespace Offcuts.Store.Interchange;

/// <summary>What may stand in the <c>code</c> column of a stock file.</summary>
public enum CodePolicy
{
    /// <summary>
    /// For taking stock into a yard: real codes whose check character fits, or nothing, where the caller draws a new one.
    /// </summary>
    Checked,

    /// <summary>
    /// For planning from files alone: any text. Each piece gets a stand-in code, in the order of the rows, and
    /// <see cref="Stock.WrittenCode"/> gives the text back.
    /// </summary>
    AsWritten,
}
