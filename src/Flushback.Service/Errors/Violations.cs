namespace Flushback.Service.Errors;

/// <summary>Gathers what is wrong with a request, so that the caller hears all of it at once.</summary>
public sealed class Violations
{
    // No caller reads more, and a large outline of nothing but NaN must not cost memory.
    private const int MostKept = 200;

    private readonly List<Violation> _kept = [];

    /// <summary>How many were found, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>The first ones found, in order.</summary>
    public IReadOnlyList<Violation> Kept => _kept;

    /// <summary>True when something is wrong with this very field already.</summary>
    public bool HasField(string field) => _kept.Exists(violation => violation.Field == field);

    /// <summary>Adds one.</summary>
    /// <param name="field">Path of the field in the contract.</param>
    /// <param name="reason">Stable reason in UPPER_SNAKE.</param>
    /// <param name="sentence">What is wrong, where, and what to do: one sentence.</param>
    public void Add(string field, string reason, string sentence)
    {
        Count++;
        if (_kept.Count < MostKept)
        {
            _kept.Add(new Violation(field, reason, sentence));
        }
    }

    /// <summary>Refuses the request with everything gathered so far, if there is anything.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT, with <see cref="Google.Rpc.BadRequest"/>.</exception>
    public void ThrowIfAny()
    {
        if (Count > 0)
        {
            throw RequestErrors.InvalidArgument(this);
        }
    }
}
