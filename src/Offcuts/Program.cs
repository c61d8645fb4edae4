using System.Text;
using Offcuts;
using Offcuts.Commands;
using Offcuts.Core.Faults;
using Offcuts.Screens;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var world = Surroundings.Real();
try
{
    return CommandLine.Run(args, world, (session, named) => session.WithYardSoon(named, yard => FullScreen.Open(yard, world)));
}
catch (Exception error)
{
    world.Error.WriteLine($"offcuts failed and changed nothing more: {TextRules.Harmless(error.Message)}");
    return Exit.Broken;
}
