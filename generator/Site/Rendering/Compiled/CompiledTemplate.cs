namespace Swapwright.Site.Rendering.Compiled;

/// <summary>A template as nodes that write straight to the page; made once, used by any number of workers.</summary>
internal sealed class CompiledTemplate(Block body, TemplateShape shape)
{
    private readonly Lazy<bool> _goesByArguments = new(() => GoesBy(shape, []));

    public Block Body => body;

    public TemplateShape Shape => shape;

    /// <summary>Whether it goes by nothing but its arguments and the way up to the site's root: neither it nor what it includes looks at the page.</summary>
    public bool GoesByArguments => _goesByArguments.Value;

    private static bool GoesBy(TemplateShape shape, HashSet<TemplateShape> seen) =>
        !seen.Add(shape) || (!shape.LooksAtPage && shape.Includes.TrueForAll(include => include.Template is { } other && GoesBy(other.Shape, seen)));
}

/// <summary>The slots of a template: arguments first, then own variables and those of loops in the order they are met.</summary>
/// <param name="arguments">So many of what an include passes are looked at.</param>
internal sealed class TemplateShape(int arguments)
{
    public int Arguments { get; } = arguments;

    public int Slots { get; private set; } = arguments;

    /// <summary>Whether it names the page itself or what belongs to it.</summary>
    public bool LooksAtPage { get; set; }

    /// <summary>What it includes.</summary>
    public List<Included> Includes { get; } = [];

    public int NewSlot() => Slots++;
}
