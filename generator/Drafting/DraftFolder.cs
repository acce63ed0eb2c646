using System.Text;

namespace Swapwright.Drafting;

/// <summary>Puts drafted files into a folder: new ones only, and nothing outside it.</summary>
public static class DraftFolder
{
    /// <exception cref="DraftProblemException">The file is there, a folder on the way is a link, or it cannot be written.</exception>
    public static void Write(string folder, string path, string text)
    {
        try
        {
            var place = folder;
            Directory.CreateDirectory(folder);
            foreach (var step in path.Split('/')[..^1])
            {
                place = Path.Combine(place, step);
                if (Directory.CreateDirectory(place).LinkTarget is not null)
                {
                    throw new DraftProblemException($"`{place}` is a link that leads elsewhere; nothing is written outside `{folder}`");
                }
            }

            using var file = new FileStream(Path.Combine(folder, path), FileMode.CreateNew, FileAccess.Write);
            file.Write(Encoding.UTF8.GetBytes(text));
        }
        catch (IOException) when (File.Exists(Path.Combine(folder, path)))
        {
            throw new DraftProblemException($"`{path}` is there already; nothing is overwritten");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new DraftProblemException($"`{path}` cannot be written: {problem.Message}");
        }
    }
}
