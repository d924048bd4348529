using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>The numbers of one entity by group code, for entities that give each code once.</summary>
internal sealed class NumberFields(TagFile file, ReadingLog log)
{
    private const int FirstCode = 10;
    private const int Codes = 70;

    private readonly double[] _values = new double[Codes];

    /// <summary>True when a number was damaged; the log says so already.</summary>
    public bool IsDamaged { get; private set; }

    /// <summary>The value of a code from 10 to 79, or NaN when the entity lacks it.</summary>
    public double this[int code] => _values[code - FirstCode];

    /// <summary>The value of a code, or what the format takes it for when the entity lacks it.</summary>
    public double Or(int code, double otherwise) => double.IsNaN(this[code]) ? otherwise : this[code];

    /// <summary>The flags of a code; none when the entity lacks it.</summary>
    public int Flags(int code) => (int)Math.Clamp(Or(code, 0), int.MinValue, int.MaxValue);

    /// <summary>The place whose x has a code; its y has that code plus 10. Not finite when the entity lacks one of them.</summary>
    public Point PointAt(int code) => new(this[code], this[code + 10]);

    /// <summary>Takes the numbers of an entity's own groups; the first of each code counts.</summary>
    public void Take(in EntityRecord record)
    {
        Array.Fill(_values, double.NaN);
        IsDamaged = false;
        for (int i = record.First + 1; i < record.End; i++)
        {
            DxfTag tag = file.Tags[i];
            int at = tag.Code - FirstCode;
            if (at < 0 || at >= Codes || !double.IsNaN(_values[at]))
            {
                continue;
            }

            if (file.TryNumber(tag, out double value))
            {
                _values[at] = value;
            }
            else
            {
                IsDamaged = true;
                log.DamagedNumber(file, tag, record);
            }
        }
    }
}
