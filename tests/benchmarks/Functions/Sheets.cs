using System.Buffers;
using BenchmarkDotNet.Attributes;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Sheets;
using Swapwright.Site.Pages;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The recommended combination of the shipped base's middle guide.</summary>
public class Sheets
{
    private readonly ArrayBufferWriter<byte> _buffer = new();
    private SiteKnowledge _site = null!;
    private GuideEntry _guide = null!;
    private Sheet _sheet = null!;
    private WiringAssembly _wiring = null!;
    private Dictionary<string, Answer> _answers = [];
    private Part[] _parts = [];

    [GlobalSetup]
    public void Setup()
    {
        _site = ShippedBase.Fresh();
        _guide = _site.Guides[_site.Guides.Length / 2];
        _sheet = _site.SheetOf(_guide);
        _wiring = new WiringAssembly(_site.Base);
        _answers = _sheet.Answers.Where(line => line.Answer is not null).ToDictionary(line => line.Position.Id, line => line.Answer!, StringComparer.Ordinal);
        _parts = [.. _answers.Values.SelectMany(answer => answer.Also.Prepend(answer.Part)).OfType<string>().Select(_site.Base.Parts.Find).OfType<Part>().Distinct()];
        if (Wiring() is null)
        {
            throw new InvalidOperationException("the middle guide has no harness");
        }
    }

    [Benchmark(Description = "sheet of one combination")]
    public object Sheet() => _site.Sheets.Build(_guide.Recommended.AsSpan());

    [Benchmark(Description = "its wiring sheet alone")]
    public object? Wiring() => _wiring.Assemble(_sheet.Donor, _sheet.Chassis, _sheet.Ecu, _answers.GetValueOrDefault, _parts);

    [Benchmark(Description = "JSON of the sheet")]
    public int Json()
    {
        _buffer.ResetWrittenCount();
        new SheetJson(_sheet, _site.Resolution).Write(_buffer);
        return _buffer.WrittenCount;
    }
}
