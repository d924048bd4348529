using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

/// <summary>The scripts of <c>completion</c>, in the shells themselves.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Theory]
    [InlineData("flushback ch", "check")]
    [InlineData("flushback in", "inspect")]
    [InlineData("flushback completion ", "bash fish zsh")]
    [InlineData("flushback check --blade-", "--blade-angle --blade-hardness --blade-layer")]
    [InlineData("flushback check --token", "--token-file")]
    [InlineData("flushback check --unit ", "cm in m mm thou")]
    [InlineData("flushback check --unit=t", "thou")]
    [InlineData("flushback check knife.dxf --half-stop n", "no")]
    [InlineData("flushback check kni", "")]
    [InlineData("flushback check ", "")]
    public async Task Bash_completes_commands_options_and_values_and_leaves_files_to_itself(
        string typed,
        string offered
    )
    {
        // The words as bash takes a line apart: at blanks, and at the sign of equality.
        string script = $$"""
            source <(flushback completion bash)
            COMP_LINE='{{typed}}'
            COMP_POINT=${#COMP_LINE}
            read -ra COMP_WORDS <<<"${COMP_LINE//=/ = }"
            [[ $COMP_LINE != *' ' ]] || COMP_WORDS+=('')
            COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            complete -p flushback
            _flushback flushback
            printf '%s\n' "${COMPREPLY[@]}"
            """;

        string[] printed = (await Shell.RunAsync(_bench, "bash", script)).Split('\n');

        Assert.Equal("complete -o bashdefault -o default -F _flushback flushback", printed[0]);
        Assert.Equal(
            offered,
            string.Join(' ', printed[1..].Where(line => line.Length > 0).Order(StringComparer.Ordinal))
        );
    }

    [Theory]
    [InlineData("bash --norc --noprofile -i", "source <(flushback completion bash)")]
    [InlineData("zsh -f -i", "autoload -Uz compinit; compinit -u -D; source <(flushback completion zsh)")]
    public async Task A_shell_on_a_terminal_completes_at_the_press_of_tab(string shell, string prepared)
    {
        string script = $$"""
            printf '%b' '{{prepared}}\nflushback comp\tba\t | head -n 1\nexit\n' |
              script --quiet --return --command '{{shell}}' /dev/null
            """;

        string printed = await Shell.RunAsync(_bench, "bash", script, ("PS1", "> "), ("TERM", "dumb"));

        Assert.Contains("# Completes what is typed after flushback, in bash.", printed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("flushback ch", "check")]
    [InlineData("flushback check --token", "--token-file")]
    [InlineData("flushback check --unit t", "thou")]
    [InlineData("flushback check --unit=t", "--unit=thou")]
    [InlineData("flushback check --unit=m", "--unit=m --unit=mm")]
    [InlineData("flushback inspect --cut", "--cutter --cut-layer")]
    public async Task Fish_completes_commands_options_and_values(string typed, string offered)
    {
        string script = $"flushback completion fish | source; complete --do-complete '{typed}'";

        string printed = await Shell.RunAsync(_bench, "fish", script, ("HOME", _bench.PathOf("")), ("TERM", "dumb"));

        Assert.Equal(offered, printed.Trim().ReplaceLineEndings(" "));
    }

    [Theory]
    [InlineData("flushback ch", "check")]
    [InlineData("flushback check --token", "--token-file")]
    [InlineData("flushback check --unit t", "thou")]
    [InlineData("flushback check --unit=t", "thou")]
    [InlineData("flushback check kni", "files")]
    public async Task Zsh_completes_commands_options_and_values_and_leaves_files_to_itself(string typed, string offered)
    {
        // Its completion only runs while a line is edited; these stand in for what it provides then.
        string script = $$"""
            compdef() { : }
            compset() { PREFIX=${PREFIX#*=} }
            _files() { print files }
            compadd() { print -l -- ${(M)candidates:#$PREFIX*} }
            source <(flushback completion zsh)
            line='{{typed}}'
            words=(${(z)line})
            CURRENT=$#words
            PREFIX=$words[CURRENT]
            _flushback
            """;

        string printed = await Shell.RunAsync(_bench, "zsh", script);

        Assert.Equal(offered, printed.Trim().ReplaceLineEndings(" "));
    }

    [Fact]
    public async Task A_shell_that_is_none_of_the_three_is_refused()
    {
        Ending ending = await Client.RunAsync("completion", "tcsh");

        Assert.Equal((2, ""), (ending.ExitCode, ending.Output));
        Assert.NotEmpty(ending.Complaints);
    }

    public void Dispose() => _bench.Dispose();
}
