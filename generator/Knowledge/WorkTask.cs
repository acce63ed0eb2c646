using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A piece of work. It appears where <see cref="When"/> holds or where a standing rule names it.</summary>
public sealed record WorkTask(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    /// <summary>The phases in the order of work.</summary>
    public static readonly ImmutableArray<string> Phases =
        ["assess", "gather", "remove", "prepare", "fit", "connect", "wire", "fill", "before-start", "first-start", "road-test", "paper"];

    public string Phase { get; init; } = "fit";

    /// <summary>null: only where a standing rule names the task.</summary>
    public Condition? When { get; init; }

    public ImmutableArray<Named> After { get; init; } = [];

    public ImmutableArray<Named> Needs { get; init; } = [];

    public Range3 Hours { get; init; }

    /// <summary>plain, careful, practised or specialist.</summary>
    public string Skill { get; init; } = "plain";

    public int People { get; init; } = 1;

    /// <summary>Tools beyond a usual set.</summary>
    public ImmutableArray<TaskTool> Tools { get; init; } = [];

    public ImmutableArray<string> Consumables { get; init; } = [];

    public ImmutableArray<string> Steps { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    public ImmutableArray<string> Mistakes { get; init; } = [];

    /// <summary>What is tightened in it.</summary>
    public ImmutableArray<FastenerEntry> Fasteners { get; init; } = [];

    public bool Refresh { get; init; }

    public string WhyNow { get; init; } = "";
}

/// <summary>A tool that a task asks for.</summary>
/// <param name="When">Where it is asked for, of the combinations that have the task; null for all of them.</param>
public sealed record TaskTool(string Title, Condition? When, Place Place);

/// <summary>A how-to in Markdown.</summary>
public sealed record Article(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    public string Summary { get; init; } = "";

    public string Body { get; init; } = "";

    /// <summary>Line of the file on which the body begins.</summary>
    public int BodyLine { get; init; }

    /// <summary>What it belongs to, as in "Wiring"; articles of one topic stand together in lists.</summary>
    public string Topic { get; init; } = "";

    public ImmutableArray<Named> Positions { get; init; } = [];

    public ImmutableArray<Named> Tasks { get; init; } = [];

    public ImmutableArray<string> Sources { get; init; } = [];

    /// <summary>reported, measured or built; empty where it is not said.</summary>
    public string Standing { get; init; } = "";

    /// <summary>The day on which it was last gone through, as written.</summary>
    public string? Checked { get; init; }

    /// <summary>Of <see cref="Checked"/>, where it is said.</summary>
    public Place CheckedPlace { get; init; }

    public int Order { get; init; }
}
