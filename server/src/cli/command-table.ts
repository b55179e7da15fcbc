/** All commands and options as plain data, read from the program itself, so that no list of them can fall behind. */
import type { Argument, Command, Option } from "commander";
import type { ArgumentRow, CommandTable, OptionRow, Value } from "../reports/command-table.ts";

/** `rules` are the names of all rules, which some options and commands take. */
export function commandTable(program: Command, rules: readonly string[]): CommandTable {
  const help = program.createHelp();
  const ruleNames: Value = { kind: "words", words: rules };
  const optionRow = (option: Option): OptionRow => {
    const word = /[<[]([a-z-]+)/u.exec(option.flags)?.[1];
    const value = (): Value => {
      if (option.argChoices) return { kind: "words", words: option.argChoices };
      if (option.long === "--rule") return ruleNames;
      return { kind: word === "file" || word === "folder" ? word : "other" };
    };
    return {
      names: [option.short, option.long].filter((name) => name != null),
      ...(word === undefined ? {} : { takes: { word, value: value() } }),
      text: option.description,
    };
  };
  const argumentValue = (argument: Argument): Value => {
    if (argument.argChoices) return { kind: "words", words: argument.argChoices };
    return argument.name() === "rule" ? ruleNames : { kind: "recipes" };
  };
  const argumentRow = (argument: Argument): ArgumentRow => ({
    usage: argument.required
      ? `<${argument.name()}>`
      : `[${argument.name()}${argument.variadic ? "..." : ""}]`,
    value: argumentValue(argument),
    text: argument.description,
  });
  return {
    name: program.name(),
    version: program.version() ?? "",
    text: program.description(),
    options: help.visibleOptions(program).map(optionRow),
    commands: help.visibleCommands(program).map((command) => ({
      name: command.name(),
      summary: command.summary(),
      text: command.description(),
      arguments: command.registeredArguments.map(argumentRow),
      options: help.visibleOptions(command).map(optionRow),
    })),
  };
}
