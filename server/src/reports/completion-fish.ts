/** Completion for fish. */
import type { CommandTable, OptionRow, Value } from "./command-table.ts";

/** In single quotes fish reads only these two. */
const quoted = (text: string): string => `'${text.replace(/['\\]/gu, "\\$&")}'`;

/** The end of a line of `complete` that offers a value. */
function offer(value: Value): string {
  switch (value.kind) {
    case "words":
      return `-f -a ${quoted(value.words.join(" "))}`;
    case "recipes":
    case "file":
      return "-F";
    case "folder":
      return "-f -a '(__fish_complete_directories)'";
    case "other":
      return "-f";
  }
}

function optionLine(name: string, condition: string, { names, takes, text }: OptionRow): string {
  const flags = names.map((each) => (each.startsWith("--") ? `-l ${each.slice(2)}` : `-s ${each.slice(1)}`));
  const value = takes ? [`-r ${offer(takes.value)}`] : [];
  return [`complete -c ${name} -n ${quoted(condition)}`, ...flags, ...value, `-d ${quoted(text)}`].join(" ");
}

/** The script as a whole. */
export function fishCompletion({ name, commands, options }: CommandTable): string {
  const first = "__fish_use_subcommand";
  return `${[
    `# Completion of ${name} for fish, printed by \`${name} completion fish\`.`,
    "",
    ...options.map((option) => optionLine(name, first, option)),
    ...commands.map(
      (command) =>
        `complete -c ${name} -n ${quoted(first)} -f -a ${command.name} -d ${quoted(command.summary)}`,
    ),
    ...commands.flatMap((command) => {
      const seen = `__fish_seen_subcommand_from ${command.name}`;
      const [argument] = command.arguments;
      return [
        "",
        `complete -c ${name} -n ${quoted(seen)} ${argument ? offer(argument.value) : "-f"}`,
        ...command.options.map((option) => optionLine(name, seen, option)),
      ];
    }),
  ].join("\n")}\n`;
}
