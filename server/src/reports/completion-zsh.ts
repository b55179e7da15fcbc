/** Completion for zsh. */
import type { CommandRow, CommandTable, OptionRow, Value } from "./command-table.ts";

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** Signs that mean something inside a line of `_arguments`. */
const inSpec = (text: string): string => text.replace(/[\\[\]:]/gu, "\\$&");

function offer(value: Value): string {
  switch (value.kind) {
    case "words":
      return `(${value.words.join(" ")})`;
    case "recipes":
      return '_files -g "*.finish"';
    case "file":
      return "_files";
    case "folder":
      return "_files -/";
    case "other":
      return " ";
  }
}

function optionSpecs({ names, takes, text }: OptionRow): readonly string[] {
  const value = takes ? `:${inSpec(takes.word)}:${offer(takes.value)}` : "";
  // With the sign, so that its word may stand behind that as well as by itself.
  const sign = (name: string): string => (takes && name.startsWith("--") ? "=" : "");
  return names.map((name) => quoted(`*${name}${sign(name)}[${inSpec(text)}]${value}`));
}

function commandLines(command: CommandRow): readonly string[] {
  const specs = [
    ...command.options.flatMap(optionSpecs),
    ...command.arguments.map(({ usage, value }) => {
      const place = usage.includes("...") ? "*" : "";
      return quoted(`${place}:${inSpec(usage.replace(/[[\]<>.]/gu, ""))}:${offer(value)}`);
    }),
  ];
  return [`    ${command.name})`, `      _arguments ${["-s", ...specs].join(" \\\n        ")}`, "      ;;"];
}

/** The script as a whole, for a file `_finishwright` in a folder of `$fpath`. */
export function zshCompletion({ name, commands, options }: CommandTable): string {
  return `${[
    `#compdef ${name}`,
    `# Completion of ${name} for zsh, printed by \`${name} completion zsh\`.`,
    "",
    `_${name}() {`,
    "  local -a commands",
    "  local line state",
    "  commands=(",
    ...commands.map((command) => `    ${quoted(`${command.name}:${inSpec(command.summary)}`)}`),
    "  )",
    `  _arguments -C ${[...options.flatMap(optionSpecs), "'1: :->command'", "'*:: :->rest'"].join(" \\\n    ")}`,
    '  case "$state" in',
    "  command)",
    "    _describe command commands",
    "    ;;",
    "  rest)",
    '    case "$line[1]" in',
    ...commands.flatMap(commandLines),
    "    esac",
    "    ;;",
    "  esac",
    "}",
    "",
    `_${name} "$@"`,
  ].join("\n")}\n`;
}
