using System.Buffers;
using Swapwright.Knowledge.Texts;
using Swapwright.Site.Models;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>The functions of <see cref="PageFunctions"/>, called without what the engine needs for a call.</summary>
internal static class Calls
{
    public static Value? Of(string name, Value argument) => name switch
    {
        "has" => new Has(argument),
        "css" => new Css(argument),
        "href" => argument is Constant { Text: { } address } ? new FixedHref(address) : new Href(argument),
        "link" => new Link(argument),
        "verb" => new VerbName(argument),
        _ => null,
    };

    private static T? As<T>(object? value) => value is null or T ? (T?)value : throw new BeyondCompiledException("a value of another kind");

    private sealed class Has(Value value) : Judgement
    {
        public override bool Truth(PageRun run) => PageFunctions.Has(value.Of(run));
    }

    private sealed class Css(Value value) : Value
    {
        private static readonly SearchValues<char> s_plain = SearchValues.Create("abcdefghijklmnopqrstuvwxyz0123456789");

        public override object Of(PageRun run) => Word(value.Of(run));

        // A class word holds nothing that has to be escaped.
        public override void Write(PageRun run) => run.Output.Write(Word(value.Of(run)));

        private static string Word(object? value) => value switch
        {
            Weight weight => Known<Weight>.Word((int)weight, value),
            Standing standing => Known<Standing>.Word((int)standing, value),
            string text when text.AsSpan().IndexOfAnyExcept(s_plain) < 0 => text,
            _ => ClassWord.Of(value),
        };
    }

    /// <summary>Class words of an enumeration, worked out once each.</summary>
    private static class Known<T>
        where T : struct, Enum
    {
        private static readonly string?[] s_words = new string?[Enum.GetValues<T>().Length];

        public static string Word(int index, object value) =>
            (uint)index < (uint)s_words.Length ? s_words[index] ??= ClassWord.Of(value) : ClassWord.Of(value);
    }

    private sealed class Href(Value value) : Value
    {
        public override object Of(PageRun run) => PageFunctions.Href(run.Prefix, As<string>(value.Of(run)));

        public override void Write(PageRun run)
        {
            var address = As<string>(value.Of(run));
            if (!Address(run, address))
            {
                run.Output.Write("#");
            }
        }
    }

    /// <summary>An address that the template itself names, judged once.</summary>
    private sealed class FixedHref(string address) : Value
    {
        private readonly AddressKind _kind = SafeUrl.Judge(address);
        private readonly string _escaped = HtmlText.Escape(address);

        public override object Of(PageRun run) => PageFunctions.Href(run.Prefix, address);

        public override void Write(PageRun run)
        {
            if (_kind == AddressKind.BelowRoot)
            {
                run.Output.WriteEscaped(run.Prefix);
            }

            run.Output.Write(_kind == AddressKind.Refused ? "#" : _escaped);
        }
    }

    private sealed class Link(Value value) : Value
    {
        public override object Of(PageRun run) => PageFunctions.Link(run.Prefix, As<PageLink>(value.Of(run)));

        public override void Write(PageRun run)
        {
            if (As<PageLink>(value.Of(run)) is not { } link)
            {
                return;
            }

            var start = run.Output.Text.Length;
            run.Output.Write("<a href=\"");
            if (Address(run, link.Href))
            {
                run.Output.Write("\">");
                run.Output.WriteEscaped(link.Text);
                run.Output.Write("</a>");
            }
            else
            {
                run.Output.Cut(start);
                run.Output.WriteEscaped(link.Text);
            }
        }
    }

    private sealed class VerbName(Value value) : Value
    {
        public override object Of(PageRun run) => VerbWord.Of(As<Verb?>(value.Of(run)) ?? default);
    }

    /// <summary>Writes an address for an attribute; false where it is refused.</summary>
    private static bool Address(PageRun run, string? address)
    {
        var kind = SafeUrl.Judge(address);
        if (kind == AddressKind.Refused)
        {
            return false;
        }

        if (kind == AddressKind.BelowRoot)
        {
            run.Output.WriteEscaped(run.Prefix);
        }

        run.Output.WriteEscaped(address!);
        return true;
    }
}
