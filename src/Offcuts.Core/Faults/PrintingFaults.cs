namespace Offcuts.Core.Faults;

/// <summary>Every sentence about labels that can't be printed for want of something to print.</summary>
public static class PrintingFaults
{
    public static Fault NothingWaits() => new("no label waits to be printed");

    public static Fault BlanksOutside(int most) => new($"print 1 to {most} blank labels at once");
}
