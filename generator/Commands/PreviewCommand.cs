using System.ComponentModel;
using System.Globalization;
using System.Net;
using System.Runtime.InteropServices;
using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Preview;
using Swapwright.Reports;

namespace Swapwright.Commands;

/// <summary><c>swapwright preview</c>: the site while somebody writes.</summary>
internal sealed class PreviewCommand : AsyncCommand<PreviewCommand.Settings>
{
    internal sealed class Settings : KnowledgeSettings
    {
        [CommandOption("--port <N>")]
        [Description("Port to listen on.")]
        [DefaultValue(5140)]
        public int Port { get; init; } = 5140;

        [CommandOption("--address <IP>")]
        [Description("Address to listen on. The usual one is reached from this machine alone; 0.0.0.0 from everywhere.")]
        [DefaultValue("127.0.0.1")]
        public string Address { get; init; } = "127.0.0.1";
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        Loading.RequireBase(settings.Folder);
        if (!IPAddress.TryParse(settings.Address, out var address) || settings.Port is < 1 or > 65535)
        {
            throw new ArgumentProblemException("`--address` takes an IP address such as 127.0.0.1, `--port` a number from 1 to 65535");
        }

        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        using var server = Start(settings, address);
        Terminal.Out.MarkupLine(PlainText.Markup(string.Create(CultureInfo.InvariantCulture, $"http://{PreviewServer.HostOf(address)}:{settings.Port}/ shows {settings.Folder} and follows it. Ctrl+C ends it.")));
        await server.Run(stop.Token);
        return Exit.Sound;

        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true;
            stop.Cancel();
        }
    }

    private static PreviewServer Start(Settings settings, IPAddress address)
    {
        try
        {
            return PreviewServer.Start(settings.Folder, address, settings.Port);
        }
        catch (Exception problem) when (problem is HttpListenerException or System.Net.Sockets.SocketException)
        {
            throw new ArgumentProblemException(string.Create(CultureInfo.InvariantCulture, $"cannot listen on {settings.Address}, port {settings.Port}: {problem.Message}; name another port by `--port`"));
        }
    }
}
