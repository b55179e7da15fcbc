/** `language-server`: serves an editor over standard input and output, or over what the editor names. */
import type { AddCommand } from "../command-context.ts";

export const addLanguageServer: AddCommand = (program, { io, finish }) => {
  program
    .command("language-server")
    .summary("serve an editor by the Language Server Protocol")
    .description(
      "Serves an editor by the Language Server Protocol over standard input and output, until the editor ends it. An " +
        "editor may ask for another way: --pipe=NAME, --socket=PORT or --node-ipc.",
    )
    .helpOption("-h, --help")
    // What editors add (`--stdio`, `--clientProcessId=…`) is between them and the server.
    .allowUnknownOption()
    .allowExcessArguments()
    .action(async () => {
      await io.startLanguageServer();
      finish(0);
    });
};
