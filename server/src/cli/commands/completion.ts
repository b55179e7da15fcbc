/** `completion`: the script by which a shell completes commands, options and their words. */
import { Argument } from "commander";
import { ruleIds } from "../../core/rules/registry.ts";
import type { CommandTable } from "../../reports/command-table.ts";
import { bashCompletion } from "../../reports/completion-bash.ts";
import { fishCompletion } from "../../reports/completion-fish.ts";
import { zshCompletion } from "../../reports/completion-zsh.ts";
import type { AddCommand } from "../command-context.ts";
import { commandTable } from "../command-table.ts";

type Shell = "bash" | "zsh" | "fish";

const SCRIPTS: Readonly<Record<Shell, (table: CommandTable) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};

export const addCompletion: AddCommand = (program, { io, finish, wholeProgram }) => {
  program
    .command("completion")
    .summary("a script with which your shell completes commands and options")
    .description(
      "Prints a script for bash, zsh or fish that completes commands, options, their words and names of recipes.",
    )
    .addArgument(new Argument("<shell>", "your shell").choices(Object.keys(SCRIPTS)))
    .addHelpText(
      "after",
      `
Where it goes; a new shell then knows it:
  bash  mkdir -p ~/.local/share/bash-completion/completions
        finishwright completion bash > \\
          ~/.local/share/bash-completion/completions/finishwright
  zsh   finishwright completion zsh > FOLDER/_finishwright
        with a FOLDER that \`echo $fpath\` names
  fish  mkdir -p ~/.config/fish/completions
        finishwright completion fish > \\
          ~/.config/fish/completions/finishwright.fish`,
    )
    .action(async (shell: Shell) => {
      io.stdout.write(SCRIPTS[shell](commandTable(await wholeProgram(), ruleIds())));
      finish(0);
    });
};
