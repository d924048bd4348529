using System.Security.Cryptography;
using System.Text;
using Flushback.Service.Hosting;

namespace Flushback.Service.Security;

/// <summary>The tokens that callers may show, from a file that may change while the service runs.</summary>
/// <remarks>
/// Several lines are several tokens, so that a new one can be given out before the old one goes. A file that cannot be
/// read, or holds no token any more, changes nothing: the tokens read last stay good, and the log says so.
/// </remarks>
internal sealed partial class TokenFile
{
    private const int ShortestToken = 16;
    private static readonly TimeSpan _lookEvery = TimeSpan.FromSeconds(1);

    private readonly string _path;
    private readonly TimeProvider _clock;
    private readonly ILogger _logger;
    private readonly Lock _lock = new();
    private byte[][] _hashes;
    private DateTime _writtenAt;
    private long _lookedAt;

    /// <summary>Reads the file.</summary>
    /// <exception cref="RefusedStartException">It cannot be read, or holds no token long enough.</exception>
    public TokenFile(string path, TimeProvider clock, ILogger logger)
    {
        (_path, _clock, _logger) = (path, clock, logger);
        _lookedAt = clock.GetTimestamp();
        try
        {
            _writtenAt = File.GetLastWriteTimeUtc(path);
            _hashes = Read(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new RefusedStartException($"The tokens in '{path}' cannot be read: {fault.Message}");
        }
    }

    /// <summary>True when a token is one of the file's. Takes the same time for every wrong one.</summary>
    public bool Holds(string token)
    {
        LookAgain();
        byte[] hash = HashOf(token);
        bool isHeld = false;
        foreach (byte[] known in Volatile.Read(ref _hashes))
        {
            isHeld |= CryptographicOperations.FixedTimeEquals(known, hash);
        }

        return isHeld;
    }

    private void LookAgain()
    {
        if (_clock.GetElapsedTime(Volatile.Read(ref _lookedAt)) < _lookEvery || !_lock.TryEnter())
        {
            return;
        }

        try
        {
            DateTime writtenAt = File.GetLastWriteTimeUtc(_path);
            if (writtenAt != _writtenAt)
            {
                _writtenAt = writtenAt;
                Volatile.Write(ref _hashes, Read(_path));
                LogReadAgain(_path);
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or RefusedStartException)
        {
            LogKept(_path, fault.Message);
        }
        finally
        {
            Volatile.Write(ref _lookedAt, _clock.GetTimestamp());
            _lock.Exit();
        }
    }

    private static byte[][] Read(string path)
    {
        string[] tokens = [.. File.ReadLines(path).Select(line => line.Trim()).Where(line => line.Length > 0)];
        if (tokens.Length == 0 || Array.Exists(tokens, token => token.Length < ShortestToken))
        {
            throw new RefusedStartException(
                $"'{path}' has to hold a token on every line, each of {ShortestToken} characters or more; make one with 'openssl rand -hex 32'."
            );
        }

        return [.. tokens.Select(HashOf)];
    }

    // Hashes have one length, so that comparing them does not tell how long a token is.
    private static byte[] HashOf(string token) => SHA256.HashData(Encoding.UTF8.GetBytes(token));

    [LoggerMessage(Level = LogLevel.Information, Message = "The tokens in {Path} have changed and were read again.")]
    private partial void LogReadAgain(string path);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The tokens in {Path} were not read again: {Reason}")]
    private partial void LogKept(string path, string reason);
}
