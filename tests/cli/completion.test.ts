/** What shells complete, asked of bash itself, and what the manual page tells. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EXIT_STATUSES } from "../../server/src/reports/exit-statuses.ts";
import { runCli } from "./run-cli.ts";

const scriptOf = async (shell: string): Promise<string> => (await runCli(["completion", shell])).stdout;

describe("bash", () => {
  let folder = "";
  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), "finishwright-"));
    mkdirSync(path.join(folder, "oak"));
    for (const name of ["a b.finish", "table.finish", "notes.txt"])
      writeFileSync(path.join(folder, name), "");
    writeFileSync(path.join(folder, "script"), await scriptOf("bash"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  /** What bash offers for the last of these words. */
  const offered = (...words: readonly string[]): readonly string[] => {
    const program = `source ./script
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _finishwright
((\${#COMPREPLY[@]})) && printf '%s\\n' "\${COMPREPLY[@]}"; true`;
    const argv = ["--noprofile", "--norc", "-c", program, "bash", "finishwright", ...words];
    return execFileSync("bash", argv, { cwd: folder, encoding: "utf8" }).split("\n").slice(0, -1).toSorted();
  };

  test.each([
    ["a command", ["ch"], ["check"]],
    ["an option", ["check", "--fi"], ["--fix"]],
    ["the words of an option", ["check", "--fail-on", ""], ["error", "hint", "warning"]],
    ["the words behind its sign", ["check", "--format", "=", "s"], ["sarif"]],
    ["recipes and folders", ["check", "--quiet", ""], ["a b.finish", "oak", "table.finish"]],
    ["folders alone", ["check", "--read-also", ""], ["oak"]],
    ["any file", ["check", "--baseline", "n"], ["notes.txt"]],
    ["names of rules", ["explain", "coat-over-wa"], ["coat-over-wax"]],
    ["shells", ["completion", "f"], ["fish"]],
    ["nothing where only a person knows", ["totals", "--job", ""], []],
    ["options of the program", ["--v"], ["--version"]],
  ] as const)("completes %s", (_, words, expected) => expect(offered(...words)).toEqual(expected));
});

const hasZsh = spawnSync("zsh", ["--version"]).status === 0;

/**
 * Zsh completes in a terminal alone: one is opened in it, in which every word that is offered is printed behind `<`, between
 * two marks.
 */
const ASK_ZSH = String.raw`
zmodload zsh/zpty
zpty asked zsh -f -i
zpty -w asked "PROMPT=; fpath=($1 \$fpath); autoload -Uz compinit && compinit -u -D
compadd() {
  local -a offered
  local each
  for each in \"\${(@)argv[1,(i)(-|--)]}\"; do [[ \$each == -[a-zA-Z]#[OAD]* ]] && { builtin compadd \"\$@\"; return; }; done
  builtin compadd -A offered \"\$@\"
  (( \$#offered )) && print -rl -- \"\${(@)offered/#/<}\"
  builtin compadd \"\$@\"
}
mark() { print -r -- '>>>' }
compprefuncs=(mark) comppostfuncs=(mark)
zle -C ask complete-word _main_complete
bindkey '^I' ask
print ready"
zpty -r asked out '*ready*'
zpty -w -n asked "$2"$'\t'
zpty -r asked out '*>>>*>>>*'
print -r -- "$out"
zpty -d asked
`;

describe.skipIf(!hasZsh)("zsh", () => {
  let folder = "";
  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), "finishwright-"));
    mkdirSync(path.join(folder, "oak"));
    for (const name of ["a b.finish", "table.finish", "notes.txt"])
      writeFileSync(path.join(folder, name), "");
    writeFileSync(path.join(folder, "_finishwright"), await scriptOf("zsh"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const offered = (line: string): readonly string[] => {
    const argv = ["-f", "-c", ASK_ZSH, "zsh", folder, `finishwright ${line}`];
    const said = execFileSync("zsh", argv, { cwd: folder, encoding: "utf8", timeout: 60_000 });
    return [...new Set([...said.matchAll(/^<([^\r\n]*)/gmu)].map(([, word]) => word!))].toSorted();
  };

  test.each([
    ["a command", "ch", ["check"]],
    ["an option", "check --fi", ["--fix"]],
    ["the words of an option", "check --fail-on ", ["error", "hint", "warning"]],
    ["the words behind its sign", "check --format=s", ["sarif"]],
    ["recipes", "check ta", ["table.finish"]],
    ["folders alone", "check --read-also ", ["oak"]],
    ["names of rules", "explain coat-over-wa", ["coat-over-wax"]],
    ["shells", "completion f", ["fish"]],
    ["options of the program", "--v", ["--version"]],
  ] as const)("completes %s", (_, line, expected) => expect(offered(line)).toEqual(expected), 120_000);
});

test.each(["bash", "zsh", "fish"])(
  "%s is told of every command, and of every option of `check`",
  async (shell) => {
    const script = await scriptOf(shell);
    const help = (await runCli(["--help"])).stdout;
    const commands = [...help.matchAll(/^ {2}([a-z-]+) .*(?:\n|$)/gmu)].map(([, name]) => name!);
    const names = commands.filter((name) => name !== "finishwright");
    expect(names).toEqual(expect.arrayContaining(["check", "sheet", "completion", "manual"]));
    for (const name of names) expect(script).toMatch(new RegExp(`\\b${name}\\b`, "u"));
    for (const [, name] of (await runCli(["check", "--help"])).stdout.matchAll(/^ {2}--([a-z-]+)/gmu))
      expect(script).toContain(shell === "fish" ? ` -l ${name} ` : `--${name}`);
  },
);

test("an unknown shell is refused with those that are known", async () => {
  const { status, stderr } = await runCli(["completion", "csh"]);
  expect(status).toBe(2);
  expect(stderr).toContain("Allowed choices are bash, zsh, fish.");
});

describe("the manual page", () => {
  test("and the help say the same of what the program ends with", async () => {
    const help = (await runCli(["--help"])).stdout;
    const page = (await runCli(["manual"])).stdout;
    for (const [status, meaning] of EXIT_STATUSES) {
      const words = meaning.replaceAll("\n", " ");
      expect(help.replaceAll(/\s+/gu, " ")).toContain(` ${status} ${words}`);
      const plain = page.replaceAll(/\\f[BIR]/gu, "").replaceAll("\\-", "-");
      expect(plain).toContain(`.TP\n${status}\n${words.replaceAll("`", "")}.\n`);
    }
    // What `find` says of itself fits.
    expect((await runCli(["find", "--help"])).stdout).toContain("0 something was found, 1 nothing was");
    for (const line of help.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  test("has every command, its own sections, and no macro but those of the page", async () => {
    const { stdout, status } = await runCli(["manual"]);
    expect(status).toBe(0);
    const lines = stdout.split("\n");
    expect(lines[0]).toMatch(/^\.TH FINISHWRIGHT 1 "" "finishwright \d+\.\d+\.\d+" "User Commands"$/u);
    expect(lines.filter((line) => line.startsWith(".SH"))).toEqual(
      ["NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "COMMANDS", "EXIT STATUS"].map(
        (title) => `.SH ${title}`,
      ),
    );
    for (const name of ["check", "diff", "language\\-server", "manual"])
      expect(lines).toContain(`.SS ${name}`);
    const macros = lines.flatMap((line) => /^[.'](\S*)/u.exec(line)?.[1] ?? []);
    expect(new Set(macros)).toEqual(new Set(["TH", "SH", "SS", "TP", "PP"]));
    // A hyphen that is typed is one that is typed, in every output of `man`.
    expect(stdout).toContain("\\fB\\-\\-fail\\-on\\fR \\fIlevel\\fR");
    expect(stdout).not.toMatch(/(?<!\\)-/u);
  });
});
