namespace Flushback.Dxf;

/// <summary>The unit of a drawing's coordinates. The values are those of the header variable <c>$INSUNITS</c>.</summary>
/// <remarks>Zero, which the format calls unitless, is no member: a drawing without a unit is refused, not guessed.</remarks>
public enum DrawingUnit
{
    /// <summary>Inches of 25.4 mm.</summary>
    Inch = 1,

    /// <summary>Feet of 304.8 mm.</summary>
    Foot = 2,

    /// <summary>Miles.</summary>
    Mile = 3,

    /// <summary>Millimetres.</summary>
    Millimetre = 4,

    /// <summary>Centimetres.</summary>
    Centimetre = 5,

    /// <summary>Metres.</summary>
    Metre = 6,

    /// <summary>Kilometres.</summary>
    Kilometre = 7,

    /// <summary>Millionths of an inch.</summary>
    Microinch = 8,

    /// <summary>Thousandths of an inch, which the format calls mils.</summary>
    Thou = 9,

    /// <summary>Yards.</summary>
    Yard = 10,

    /// <summary>Angstroms.</summary>
    Angstrom = 11,

    /// <summary>Nanometres.</summary>
    Nanometre = 12,

    /// <summary>Micrometres.</summary>
    Micrometre = 13,

    /// <summary>Decimetres.</summary>
    Decimetre = 14,

    /// <summary>Decametres.</summary>
    Decametre = 15,

    /// <summary>Hectometres.</summary>
    Hectometre = 16,

    /// <summary>Gigametres.</summary>
    Gigametre = 17,

    /// <summary>Astronomical units.</summary>
    AstronomicalUnit = 18,

    /// <summary>Light years.</summary>
    LightYear = 19,

    /// <summary>Parsecs.</summary>
    Parsec = 20,

    /// <summary>US survey feet of 1200/3937 m.</summary>
    SurveyFoot = 21,

    /// <summary>US survey inches of 100/3937 m.</summary>
    SurveyInch = 22,

    /// <summary>US survey yards of 3600/3937 m.</summary>
    SurveyYard = 23,

    /// <summary>US survey miles of 5280 survey feet.</summary>
    SurveyMile = 24,
}
