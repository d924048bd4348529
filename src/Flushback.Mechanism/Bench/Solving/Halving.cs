using Flushback.Geometry;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Closes in, by halving the blade angle, on where something about the knife changes.</summary>
internal static class Halving
{
    // Each halving is one binary digit of the angle; a double has no more to give.
    private const int Most = 80;

    // What rounding leaves a guess unsure of, in units of the finest angle.
    private const double Unsure = 4;

    /// <summary>The last state in which a condition holds and the first beyond it, to the last digit of the blade angle.</summary>
    /// <param name="holds">A state in which the condition holds.</param>
    /// <param name="fails">A state, at another blade angle, in which it does not.</param>
    /// <param name="angleOf">Blade angle of a state.</param>
    /// <param name="stateAt">The state at a blade angle, followed from one in which the condition holds.</param>
    /// <param name="condition">What is looked for.</param>
    /// <param name="finest">Blade angles nearer than this need not be told apart.</param>
    /// <param name="guess">
    /// Where the change is to be expected between two states, with an error that shrinks as the square of their distance;
    /// not a number where nothing is known. It saves most of the halving; after wrong ones ever longer is waited with the next.
    /// </param>
    public static (T Holds, T Fails) Between<T>(
        T holds,
        T fails,
        Func<T, Angle> angleOf,
        Func<Angle, T, T> stateAt,
        Func<T, bool> condition,
        Angle finest,
        Func<T, T, Angle>? guess = null
    )
    {
        int nextGuess = 0;
        int pause = 1;
        for (int i = 0; i < Most; i++)
        {
            double width = Width();
            Angle middle = (angleOf(holds) + angleOf(fails)) * 0.5;
            if (Math.Abs(width) < finest.Radians || middle == angleOf(holds) || middle == angleOf(fails))
            {
                break;
            }

            if (guess is not null && i >= nextGuess)
            {
                Angle about = guess(holds, fails);
                Angle error = new(Math.CopySign(Math.Max(width * width, Unsure * finest.Radians), width));
                Try(about - error);
                Try(about + error);
                bool isCaught = Math.Abs(Width()) < 3 * Math.Abs(error.Radians);
                (nextGuess, pause) = isCaught ? (i, 1) : (i + pause, 2 * pause);
            }

            if (Math.Abs(Width()) > Math.Abs(width) / 2)
            {
                Try(middle);
            }
        }

        return (holds, fails);

        double Width() => (angleOf(fails) - angleOf(holds)).Radians;

        void Try(Angle angle)
        {
            if ((angle - angleOf(holds)).Radians * (angleOf(fails) - angle).Radians > 0)
            {
                T state = stateAt(angle, holds);
                (holds, fails) = condition(state) ? (state, fails) : (holds, state);
            }
        }
    }
}
