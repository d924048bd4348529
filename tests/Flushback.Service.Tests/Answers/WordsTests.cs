using Flushback.Mechanism.Knives;
using Flushback.Service.Mapping;

namespace Flushback.Service.Tests.Answers;

public sealed class WordsTests
{
    [Fact]
    public void Every_face_of_the_blade_has_a_word_of_its_own_in_the_contract()
    {
        BladeFace[] faces = Enum.GetValues<BladeFace>();

        Assert.Equal(faces, faces.Select(face => face.ToWire().ToFace()));
        Assert.Equal(Enum.GetValues<Wire.BladeFace>().Order(), faces.Select(face => face.ToWire()).Order());
    }

    [Fact]
    public void Every_face_of_the_spring_has_a_word_of_its_own_in_the_contract()
    {
        SpringFace[] faces = Enum.GetValues<SpringFace>();

        Assert.Equal(faces, faces.Select(face => face.ToWire().ToFace()));
        Assert.Equal(Enum.GetValues<Wire.SpringFace>().Order(), faces.Select(face => face.ToWire()).Order());
    }
}
