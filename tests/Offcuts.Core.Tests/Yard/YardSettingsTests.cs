using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class YardSettingsTests
{
    [Fact]
    public void A_new_yard_saws_an_eighth_and_keeps_a_foot()
    {
        var lumber = MaterialReader.Read("2x4").Value;
        YardSettings.Usual.Kerf(lumber).Should().Be(Length.Inches(0.125m), "common practice for a circular saw");
        YardSettings.Usual.Keep(lumber).Should().Be(Length.Inches(12));
        YardSettings.Usual.Unit.Should().Be(LengthUnit.Inch);
    }

    [Fact]
    public void A_family_has_its_own_kerf_and_a_material_its_own_keep_length()
    {
        var settings = new YardSettings
        {
            Kerfs = YardSettings.Usual.Kerfs.Add(MaterialFamily.Rebar, Length.Zero),
            Keeps = YardSettings.Usual.Keeps.Add("Foam 2x12", Length.Inches(6)),
        };
        settings.Kerf(MaterialReader.Read("#4").Value).Should().Be(Length.Zero, "a shear loses nothing");
        settings.Kerf(MaterialReader.Read("2x4").Value).Should().Be(Length.Inches(0.125m));
        settings.Keep(MaterialReader.Read("foam 2x12").Value).Should().Be(Length.Inches(6));
        settings.Keep(MaterialReader.Read("2x4").Value).Should().Be(Length.Inches(12));
    }
}
