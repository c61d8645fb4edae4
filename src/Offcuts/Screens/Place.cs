namespace Offcuts.Screens;

/// <summary>The places of the full screen, in the order of the work.</summary>
internal enum Place
{
    /// <summary>What matters now.</summary>
    Today,

    /// <summary>What lies in the yard.</summary>
    Yard,

    /// <summary>Cataloguing what comes off a form.</summary>
    Strip,

    /// <summary>What the stages need.</summary>
    Stages,

    /// <summary>What is cut from what.</summary>
    Plan,

    /// <summary>The walls of the stages, row by row.</summary>
    Walls,

    /// <summary>What was saved by what was done.</summary>
    Ledger,

    /// <summary>What new lengths cost.</summary>
    Prices,

    /// <summary>What is set for the yard.</summary>
    Settings,

    /// <summary>Whether it is all still there.</summary>
    Count,

    /// <summary>What goes to another build.</summary>
    Hand,
}
