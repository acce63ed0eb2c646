using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Fitting;

/// <summary>A port is told by the thing in hand: a radiator that is bought in the shape of the car's own is the bought one.</summary>
public sealed class BoughtPortTests
{
    private static readonly KnowledgeBase s_base = new MemoryBase
    {
        ["kb.yaml"] = "title: Hoses\nas-of: 2026-03-01\n",
        ["vocabulary.yaml"] = """
            ports:
              engine-out: {title: Outlet, circuit: coolant}
              radiator-upper: {title: Upper neck, circuit: coolant, position: radiator, on: chassis}
            hoses:
              upper: {title: Upper hose, from: engine-out, to: radiator-upper}

            """,
        ["positions.yaml"] = "systems: {cooling: {title: Cooling}}\npositions: {radiator: {system: cooling, title: Radiator}}\n",
        ["chassis/car.yaml"] = "title: Car\nyears: {from: 1990, to: 1990}\nports: {radiator-upper: {size: 32, location: [0, 0, 0]}}\n",
        ["engines/motor.yaml"] = "title: Motor\nyears: {from: 1990, to: 1990}\nports: {engine-out: {size: 32, location: [0, 200, 0]}}\n",
        ["parts/wide.yaml"] = "title: Radiator of 32 mm\n",
        ["parts/narrow.yaml"] = "title: Radiator with its own necks\nports: {radiator-upper: {size: 28}}\n",
        ["parts/cap.yaml"] = "title: Radiator cap\n",
    }.Bind();

    [Theory]
    [InlineData("chassis", null, "chassis", 32)]
    [InlineData("chassis", "cap", "chassis", 32)] // something bought for the one that stays
    [InlineData("new", null, "chassis", 32)]
    [InlineData("new", "wide", "Radiator of 32 mm", 32)]
    [InlineData("new", "narrow", "Radiator with its own necks", 28)]
    public void Assemble_Owner_IsTheThingInHand(string source, string? part, string owner, double size)
    {
        var answer = new Answer("radiator", source, "as-is", part, [], [], "", [], null, default);
        var sheet = new HoseAssembly(s_base).Assemble(s_base.Donors["motor"], s_base.Chassis["car"], position => position == "radiator" ? answer : null, [answer])!;
        var port = Assert.Single(sheet.Runs).To;

        Assert.Equal((owner, size), (port.Owner, port.SizeMm));
    }
}
