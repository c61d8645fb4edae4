namespace Offcuts.Matching.Methods;

/// <summary>Which node of a search is next.</summary>
internal enum NodeOrder
{
    /// <summary>The newest: depth first.</summary>
    NewestFirst,

    /// <summary>That with the least bound; of several the newest.</summary>
    LeastBoundFirst,
}
