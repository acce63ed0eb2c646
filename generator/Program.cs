using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Commands;
using Swapwright.Reports;
using Swapwright.Space;

var app = new CommandApp();
app.Configure(config =>
{
    config.SetApplicationName(Product.Name);
    config.SetApplicationVersion(Product.Version);
    config.ConfigureConsole(Terminal.Out);
    config.UseStrictParsing();
    config.SetHelpProvider(new HelpWithExits(config.Settings));
    config.AddCommand<CheckCommand>("check")
        .WithDescription("Read a knowledge base and prove that it agrees with itself.")
        .WithExample("check")
        .WithExample("check", "swap-kb", "--report", "json", "--to", "findings.json");
    config.AddCommand<SiteCommand>("site")
        .WithDescription("Check, then render the site: one guide for every buildable combination.")
        .WithExample("site")
        .WithExample("site", "swap-kb", "--to", "out/site");
    config.AddCommand<SheetCommand>("sheet")
        .WithDescription("Everything for one combination: answers, belts, wiring, order of work.")
        .WithExample("sheet", "quillet-m-92", "orrel-18-95", "gearbox=keep")
        .WithExample("sheet", "quillet-m-92", "orrel-18-95", "--as", "json", "--part", "wiring");
    config.AddCommand<WhyCommand>("why")
        .WithDescription("The rules behind one answer, the ones overridden, and what else could hold; or how a number of a worksheet was got.")
        .WithExample("why", "quillet-m-92", "orrel-18-95", "radiator")
        .WithExample("why", "quillet-m-92", "orrel-18-95", "gearing.top-speed");
    config.AddCommand<ImpactCommand>("impact")
        .WithDescription("What changes for readers from one knowledge base to another: two folders, or revisions in git.")
        .WithExample("impact", "HEAD", "swap-kb")
        .WithExample("impact", "main", "HEAD", "--as", "markdown", "--to", "comment.md");
    config.AddCommand<RegisterCommand>("register")
        .WithDescription("Add the ids of new entities to register.yaml, so that none goes in silence later.")
        .WithExample("register");
    config.AddCommand<DraftCommand>("draft")
        .WithDescription("Write a new knowledge file that is valid at once, or a new base.")
        .WithExample("draft", "engine", "marn-16-95", "--like", "marn-16-92", "--title", "\"Marn 16 manual 1995\"")
        .WithExample("draft", "rule", "radiator-alloy", "--system", "cooling")
        .WithExample("draft", "base", "our-swaps");
    config.AddCommand<PreviewCommand>("preview")
        .WithDescription("Serve the site on this machine while you write: it follows the files and shows the findings.")
        .WithExample("preview")
        .WithExample("preview", "swap-kb", "--port", "8100");
    config.AddCommand<SchemaCommand>("schema")
        .WithDescription("Write the schemas for your editor, with the ids that the base has now.")
        .WithExample("schema", "swap-kb", "--to", "out/schema");
    config.SetExceptionHandler((problem, _) =>
    {
        var ours = problem is ArgumentProblemException or SpaceLimitException or CommandAppException or OperationCanceledException or IOException or UnauthorizedAccessException;
        var trace = Environment.GetEnvironmentVariable("SWAPWRIGHT_TRACE") is { Length: > 0 };
        var message = problem is CommandParseException or CommandRuntimeException ? $"{problem.Message.TrimEnd('.')}; `{Product.Name} --help` lists what there is"
            : ours ? problem.Message
            : trace ? problem.ToString()
            : $"this is a fault of the program, not of your files: {problem.Message} (set SWAPWRIGHT_TRACE=1 to see where)";
        Terminal.Error.MarkupLine($"[red]swapwright:[/] {PlainText.Markup(message)}");
        return Exit.CouldNotRun;
    });
});

// Help without arguments is no failure, and a broken pipe is the reader's decision, not an error of ours.
return await app.RunAsync(args.Length == 0 ? ["--help"] : args);
