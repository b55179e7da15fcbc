/** The manual page in the macros of `man`. */
import type { CommandRow, CommandTable, OptionRow } from "./command-table.ts";
import { EXIT_STATUSES } from "./exit-statuses.ts";

/** A line of text: no sign of it is a macro. */
const roff = (text: string): string =>
  text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replace(/^(?=[.'])/u, "\\&");

/** `words` in backquotes are what one types. */
const sentence = (text: string): string =>
  roff(text.replaceAll("\n", " ")).replace(/`([^`]*)`/gu, "\\fB$1\\fR");

const bold = (text: string): string => `\\fB${roff(text)}\\fR`;
const italic = (text: string): string => `\\fI${roff(text)}\\fR`;

function optionLines({ names, takes, text }: OptionRow): readonly string[] {
  const words = takes?.value.kind === "words" && takes.value.words.length > 0 ? takes.value.words : undefined;
  const term = `${names.map(bold).join(", ")}${takes ? ` ${italic(takes.word)}` : ""}`;
  return [".TP", term, `${sentence(text)}${words ? `: ${words.map(bold).join(", ")}` : ""}.`];
}

function commandLines(name: string, command: CommandRow): readonly string[] {
  const usage = [bold(name), bold(command.name), ...command.arguments.map((each) => italic(each.usage))];
  return [
    `.SS ${roff(command.name)}`,
    `${usage.join(" ")} [${italic("options")}]`,
    ".PP",
    sentence(command.text),
    ...command.arguments.flatMap(({ usage: of, text }) =>
      text === "" ? [] : [".TP", italic(of), `${sentence(text)}.`],
    ),
    ...command.options.flatMap(optionLines),
  ];
}

/** The page, with the version for its foot; without a date, so that the same program prints the same page. */
export function manualPage({ name, version, text, options, commands }: CommandTable): string {
  return `${[
    `.TH ${name.toUpperCase()} 1 "" "${roff(`${name} ${version}`)}" "User Commands"`,
    ".SH NAME",
    `${roff(name)} \\- ${sentence(text.replace(/\.$/u, "").replace(/^\p{Lu}/u, (letter) => letter.toLowerCase()))}`,
    ".SH SYNOPSIS",
    `${bold(name)} ${italic("command")} [${italic("arguments")}] [${italic("options")}]`,
    ".SH DESCRIPTION",
    sentence(text),
    ".PP",
    sentence(
      "It advises and never certifies anything as safe: the label, the safety data sheet, local codes and licensed practice come first.",
    ),
    ".SH OPTIONS",
    ...options.flatMap(optionLines),
    ".SH COMMANDS",
    ...commands.flatMap((command) => commandLines(name, command)),
    ".SH EXIT STATUS",
    ...EXIT_STATUSES.flatMap(([status, meaning]) => [".TP", bold(status), `${sentence(meaning)}.`]),
  ].join("\n")}\n`;
}
