using System.Reflection;
using System.Runtime.InteropServices;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace Offcuts.Screens;

/// <summary>
/// The keys of a Unix terminal, waited for in the kernel. The library's own input looks for them fifty times a second; this one is woken by them.
/// </summary>
/// <param name="pace">Stirred where keys came, once they stand in the library's queue.</param>
internal sealed class WaitingInput(Pace pace) : AnsiInput
{
    // Between two looks whether the program ends: that is how long leaving waits for this thread at most.
    private const int LongestMilliseconds = 100;

    private bool _came;

    // Version 2.5.0 has a door for an input of one's own, but opens it only to its own tests, and its list of drivers does not ask what stands in it.
    private static readonly ConstructorInfo? Door = typeof(IApplication).Assembly.GetType("Terminal.Gui.App.ApplicationImpl")
        ?.GetConstructor(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public, [typeof(IComponentFactory)]);

    /// <summary>True where the library lets keys be waited for; else its own input looks for them, and an idle program uses more of the processor.</summary>
    public static bool Fits => Door is not null && !OperatingSystem.IsWindows();

    /// <summary>The application, with this input where it fits.</summary>
    public static IApplication Application(Pace pace) => Fits && Door!.Invoke([new Factory(pace)]) is IApplication app ? app : Terminal.Gui.App.Application.Create();

    /// <summary>True where keys are there to be read. Called by the library again and again, each time after it has queued what was read before.</summary>
    public override bool Peek()
    {
        if (_came) pace.Wake();
        var input = new Watched { File = 0, Asked = PollIn };
        var many = poll(ref input, 1, LongestMilliseconds);
        // A terminal that hung up has nothing more to say; the signal that tells so ends the program. Until then nothing is read again and again.
        if (many > 0 && (input.Found & (PollHangUp | PollError | PollInvalid)) != 0)
        {
            Thread.Sleep(LongestMilliseconds);
            return _came = false;
        }

        return _came = many > 0 && (input.Found & PollIn) != 0 && base.Peek();
    }

    private sealed class Factory(Pace pace) : AnsiComponentFactory
    {
        public override IInput<char> CreateInput()
        {
            pace.KeysWake();
            return new WaitingInput(pace);
        }
    }

    // By POSIX poll(2); the numbers are the same on Linux and on macOS.
    private const short PollIn = 0x1;
    private const short PollError = 0x8;
    private const short PollHangUp = 0x10;
    private const short PollInvalid = 0x20;

    [StructLayout(LayoutKind.Sequential)]
    private struct Watched
    {
        public int File;
        public short Asked;
        public short Found;
    }

    [DllImport("libc")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int poll(ref Watched input, uint many, int milliseconds);
}
