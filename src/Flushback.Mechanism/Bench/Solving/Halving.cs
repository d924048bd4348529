using Flushback.Geometry;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Closes in, by halving the blade angle, on where something about the knife changes.</summary>
internal static class Halving
{
    // Each halving is one binary digit of the angle; a double has no more to give.
    private const int Most = 80;

    /// <summary>The last state in which a condition holds and the first beyond it, to the last digit of the blade angle.</summary>
    /// <param name="holds">A state in which the condition holds.</param>
    /// <param name="fails">A state, at another blade angle, in which it does not.</param>
    /// <param name="angleOf">Blade angle of a state.</param>
    /// <param name="stateAt">The state at a blade angle, followed from one in which the condition holds.</param>
    /// <param name="condition">What is looked for.</param>
    /// <param name="finest">Blade angles nearer than this need not be told apart; the last digit without it.</param>
    public static (T Holds, T Fails) Between<T>(
        T holds,
        T fails,
        Func<T, Angle> angleOf,
        Func<Angle, T, T> stateAt,
        Func<T, bool> condition,
        Angle finest = default
    )
    {
        for (int i = 0; i < Most; i++)
        {
            Angle middle = (angleOf(holds) + angleOf(fails)) * 0.5;
            bool isFine = Math.Abs((angleOf(holds) - angleOf(fails)).Radians) < finest.Radians;
            if (isFine || middle == angleOf(holds) || middle == angleOf(fails))
            {
                break;
            }

            T state = stateAt(middle, holds);
            (holds, fails) = condition(state) ? (state, fails) : (holds, state);
        }

        return (holds, fails);
    }
}
