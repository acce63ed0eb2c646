using System.Reflection;

namespace Swapwright.Site.Reuse;

/// <summary>Which program makes the pages: this one, the libraries it draws on and the runtime, each by the id that its compiler gave it.</summary>
internal static class ProgramDigest
{
    public static Digest Of()
    {
        var digest = new DigestBuilder();
        foreach (var type in new[] { typeof(ProgramDigest), typeof(Scriban.Template), typeof(Markdig.Markdown), typeof(YamlDotNet.Core.Parser), typeof(object), typeof(System.Text.Json.Utf8JsonWriter) })
        {
            digest.Add(type.Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "").Add(type.Module.ModuleVersionId.ToString());
        }

        return digest.Finish();
    }
}
