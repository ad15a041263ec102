using System.Text;
using Lapwise.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
Console.InputEncoding = Encoding.UTF8;
var terminal = new Terminal(Console.In, Console.Out, Console.Error, IsInteractive: !Console.IsOutputRedirected, ShowsProgress: !Console.IsErrorRedirected);
return (int)CommandLine.Run(args, terminal);
