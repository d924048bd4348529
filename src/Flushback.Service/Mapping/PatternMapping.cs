using Flushback.Patterns.Parameters;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace Flushback.Service.Mapping;

/// <summary>Parameters of a pattern between the contract and the core, by the table of them: both name every number alike.</summary>
internal static class PatternMapping
{
    private static readonly Dictionary<BladeFamily, Wire.BladeFamily> _families = Enum.GetValues<BladeFamily>()
        .ToDictionary(family => family, family => Enum.Parse<Wire.BladeFamily>(family.ToString()));

    /// <summary>From the contract; null for every default.</summary>
    public static PatternParameters ToParameters(this Wire.Pattern? wire)
    {
        wire ??= new Wire.Pattern();
        PatternParameters parameters = PatternParameters.Default;
        foreach (PatternLimit limit in PatternLimits.All)
        {
            (IMessage? group, FieldDescriptor field) = FieldOf(wire, limit);
            if (group is not null && field.Accessor.HasValue(group))
            {
                parameters = limit.Write(parameters, (double)field.Accessor.GetValue(group));
            }
        }

        return parameters with
        {
            Tang = parameters.Tang with { HasHalfStop = wire.Tang is not { HasHalfStop: true, HalfStop: false } },
            Blade = parameters.Blade with { Family = FamilyOf(wire.Blade) },
        };
    }

    /// <summary>To the contract; numbers that are null stay absent.</summary>
    public static Wire.Pattern ToWire(this PatternParameters parameters)
    {
        Wire.Pattern wire = new()
        {
            Handle = new(),
            Pins = new(),
            Tang = new() { HalfStop = parameters.Tang.HasHalfStop },
            Spring = new(),
            Blade = new() { Family = _families[parameters.Blade.Family] },
            Readings = new(),
            Stock = new(),
        };
        foreach (PatternLimit limit in PatternLimits.All)
        {
            if (limit.Read(parameters) is { } value)
            {
                (IMessage? group, FieldDescriptor field) = FieldOf(wire, limit);
                field.Accessor.SetValue(group, value);
            }
        }

        return wire;
    }

    // A word that is not known is refused by the validation, which asks for the parameters too.
    /// <summary>True when a page says what a number is.</summary>
    public static bool IsGiven(Wire.Pattern? pattern, PatternLimit limit)
    {
        (IMessage? group, FieldDescriptor field) = FieldOf(pattern ?? new Wire.Pattern(), limit);
        return group is not null && field.Accessor.HasValue(group);
    }

    /// <summary>A page with every number that is another in some parameters, the rest as it is on the page.</summary>
    public static Wire.Pattern With(this Wire.Pattern? page, PatternParameters parameters)
    {
        Wire.Pattern changed = page?.Clone() ?? new Wire.Pattern();
        PatternParameters given = page.ToParameters();
        foreach (PatternLimit limit in PatternLimits.All)
        {
            if (limit.Read(parameters) is { } value && value != limit.Read(given))
            {
                FieldDescriptor groupField = Wire.Pattern.Descriptor.FindFieldByName(limit.Group);
                (IMessage? group, FieldDescriptor field) = FieldOf(changed, limit);
                group ??= groupField.MessageType.Parser.ParseFrom([]);
                field.Accessor.SetValue(group, value);
                groupField.Accessor.SetValue(changed, group);
            }
        }

        return changed;
    }

    private static BladeFamily FamilyOf(Wire.BladeParameters? blade) =>
        _families
            .FirstOrDefault(pair => pair.Value == blade?.Family, new(PatternParameters.Default.Blade.Family, default))
            .Key;

    private static (IMessage? Group, FieldDescriptor Field) FieldOf(Wire.Pattern pattern, PatternLimit limit)
    {
        FieldDescriptor group = Wire.Pattern.Descriptor.FindFieldByName(limit.Group);
        FieldDescriptor field = group.MessageType.FindFieldByName(limit.Path[(limit.Group.Length + 1)..]);
        return ((IMessage?)group.Accessor.GetValue(pattern), field);
    }
}
