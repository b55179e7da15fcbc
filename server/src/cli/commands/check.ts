/** `check`: the findings of files and folders. */
import { Option } from "commander";
import type { Severity } from "../../core/findings.ts";
import { isAtLeast } from "../../core/findings.ts";
import { findingsJson } from "../../reports/findings-json.ts";
import { findingsLines } from "../../reports/findings-lines.ts";
import { findingsSarif } from "../../reports/findings-sarif.ts";
import { findingsText } from "../../reports/findings-text.ts";
import { type FindingReport, type OtherFile, onePerLine } from "../../reports/reported.ts";
import type { FileFinding } from "../../views/places/file-finding.ts";
import { type Checked, checkFiles } from "../check-files.ts";
import {
  type AddCommand,
  type CommandContext,
  filesWithErrors,
  formatOption,
  outputColours,
  outputColumns,
  readAlsoOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, warn } from "../io.ts";
import type { LoadOptions } from "../load.ts";

interface CheckOptions extends LoadOptions {
  readonly format: "text" | "lines" | "json" | "sarif";
  readonly failOn: Severity;
}

export const addCheck: AddCommand = (program, ctx) => {
  program
    .command("check")
    .summary("report errors and likely problems")
    .description(
      "Checks recipes and reports errors and likely problems. Files that a recipe uses are read, too; " +
        "their own findings are printed only if you name those files.",
    )
    .argument("[paths...]", "files, folders or patterns; the current folder if none is given")
    .addOption(formatOption(["text", "lines", "json", "sarif"]))
    .addOption(
      new Option("--fail-on <level>", "lowest level of finding for which the exit status is 1")
        .choices(["error", "warning", "hint"])
        .default("error"),
    )
    .addOption(readAlsoOption())
    .action(async (paths: string[], options: CheckOptions) => ctx.finish(await check(ctx, paths, options)));
};

export async function check(
  { io }: Pick<CommandContext, "io">,
  paths: readonly string[],
  options: CheckOptions,
): Promise<ExitStatus> {
  const checked = await checkFiles(io, paths, options);
  const report = reportOf(checked);
  if (options.format === "json") io.stdout.write(findingsJson(onePerLine(report)));
  else if (options.format === "lines") io.stdout.write(findingsLines(onePerLine(report)));
  else if (options.format === "sarif") io.stdout.write(findingsSarif(onePerLine(report), io.version));
  else if (checked.files.length > 0) {
    io.stdout.write(findingsText(report, { colours: outputColours(io), columns: outputColumns(io) }));
    tellOfUsed(io, checked);
  }
  if (!checked.complete) return 2;
  const isGrave = (finding: FileFinding): boolean => isAtLeast(finding.severity, options.failOn);
  return report.files.some((file) => file.findings.some(isGrave)) ? 1 : 0;
}

/** What cannot be read in a file that is only used changes what is found here, and would not be seen. */
function tellOfUsed(io: CliIo, { files, together, label }: Checked): void {
  const asked = files.map(({ path }) => path).filter((file) => together.text(file) !== undefined);
  for (const used of filesWithErrors({ analysis: together, label }, asked).filter(({ isUsed }) => isUsed)) {
    const errors = used.count === 1 ? "an error" : `${used.count} errors`;
    warn(
      io,
      `\`${used.label}\` is used here and has ${errors} of its own: see \`finishwright check ${used.label}\`.`,
    );
  }
}

function reportOf({ files, together, label }: Checked): FindingReport {
  const texts = new Map(files.map(({ path, text }) => [path, text]));
  const others = new Map<string, OtherFile>();
  const other = (file: string): OtherFile => {
    const known = others.get(file) ?? {
      label: label(file),
      text: texts.get(file) ?? together.text(file) ?? "",
    };
    others.set(file, known);
    return known;
  };
  return { files, other };
}
