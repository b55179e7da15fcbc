/** `manual`: the manual page. */
import { manualPage } from "../../reports/manual-page.ts";
import type { AddCommand } from "../command-context.ts";
import { commandTable } from "../command-table.ts";

export const addManual: AddCommand = (program, { io, finish, wholeProgram }) => {
  program
    .command("manual")
    .summary("the manual page, for `man`")
    .description("Prints the manual page of all commands and options, as `man` reads it.")
    .addHelpText(
      "after",
      `
To keep it, so that \`man finishwright\` shows it:
  mkdir -p ~/.local/share/man/man1
  finishwright manual > ~/.local/share/man/man1/finishwright.1
To read it at once:
  finishwright manual | man -l -`,
    )
    .action(async () => {
      io.stdout.write(manualPage(commandTable(await wholeProgram(), [])));
      finish(0);
    });
};
