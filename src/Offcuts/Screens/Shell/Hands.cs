namespace Offcuts.Screens;

/// <summary>A door to the threads: where work is done, and where its outcome is shown. A test does everything at once.</summary>
internal interface IHands
{
    /// <summary>Does work on the yard, one after the other, away from the screen.</summary>
    void Away(Action work);

    /// <summary>Does long work beside everything else. It may not touch the yard's file that <see cref="Away"/> uses.</summary>
    void Apart(Action work);

    /// <summary>Does work on the screen's thread, soon.</summary>
    void Home(Action work);
}
