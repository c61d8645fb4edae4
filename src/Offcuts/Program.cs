using System.Text;
using Offcuts;
using Offcuts.Commands;
using Offcuts.Screens;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var world = Surroundings.Real();

// What fails beside the main thread would end the program where it stands, with the terminal as the screen left it.
AppDomain.CurrentDomain.UnhandledException += (_, failed) =>
{
    FullScreen.GiveBackTerminal();
    if (failed.ExceptionObject is Exception error) Environment.Exit(CrashReport.Tell(error, args, world, FullScreen.Typed));
};
try
{
    return CommandLine.Run(args, world, (session, named) => session.WithYardSoon(named, yard => FullScreen.Open(yard, world)));
}
catch (Exception error)
{
    return CrashReport.Tell(error, args, world, FullScreen.Typed);
}
