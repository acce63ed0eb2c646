namespace Swapwright.Site.Rendering.Compiled;

/// <summary>A template as nodes that write straight to the page; made once, used by any number of workers.</summary>
internal sealed record CompiledTemplate(Block Body, TemplateShape Shape);

/// <summary>The slots of a template: arguments first, then own variables and those of loops in the order they are met.</summary>
/// <param name="arguments">So many of what an include passes are looked at.</param>
internal sealed class TemplateShape(int arguments)
{
    public int Arguments { get; } = arguments;

    public int Slots { get; private set; } = arguments;

    public int NewSlot() => Slots++;
}
