/**
 * A baseline: the findings that a folder of old recipes had when somebody began to check it, so that only new ones count.
 *
 * Findings are known by the file, the rule, the job and the words of their line, so that lines above may come and go. What
 * stands in the baseline and is found no more simply stays there until it is written anew.
 */
import path from "node:path";
import * as z from "zod/mini";
import { jsonText } from "../escape/json.ts";
import { type FindingReport, type ReportedFile, regionOf } from "../reports/reported.ts";
import { fingerprintsOf } from "./finding-fingerprint.ts";
import { type CliIo, UsageError } from "./io.ts";

const MADE_BY = "finishwright baseline";

const SCHEMA = z.object({
  made_by: z.literal(MADE_BY),
  version: z.literal(1),
  findings: z.array(
    z.object({
      fingerprint: z.string().check(z.regex(/^[0-9a-f]{32}$/u)),
      file: z.string(),
      line: z.int().check(z.minimum(1)),
      rule: z.string(),
    }),
  ),
});

/** The file as the baseline names it: from the folder of the baseline, so that it holds wherever the command runs. */
const asNamed = (io: CliIo, baseline: string, file: ReportedFile): ReportedFile => {
  const folder = path.dirname(path.resolve(io.cwd, baseline));
  const label = path.relative(folder, path.resolve(io.cwd, file.label)).replaceAll("\\", "/");
  return { ...file, label };
};

export interface Baseline {
  /** The fingerprints of what is known. */
  readonly known: ReadonlySet<string>;
  readonly named: (file: ReportedFile) => ReportedFile;
}

/** Throws a `UsageError` where the file cannot be read or is no baseline. */
export async function readBaseline(io: CliIo, baseline: string): Promise<Baseline> {
  const read = await io.files.read(path.resolve(io.cwd, baseline));
  if ("reason" in read) {
    throw new UsageError(
      `The baseline \`${baseline}\` ${read.reason}. \`--write-baseline ${baseline}\` makes one.`,
    );
  }
  const parsed = SCHEMA.safeParse(parsedJson(read.text));
  if (!parsed.success) {
    throw new UsageError(
      `\`${baseline}\` is not a baseline of this version. \`--write-baseline\` makes one; give it a new name.`,
    );
  }
  return {
    known: new Set(parsed.data.findings.map(({ fingerprint }) => fingerprint)),
    named: (file) => asNamed(io, baseline, file),
  };
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The report without what the baseline lists. */
export function withoutKnown(report: FindingReport, { known, named }: Baseline): FindingReport {
  return {
    ...report,
    files: report.files.map((file) => {
      const fingerprints = fingerprintsOf(named(file));
      return { ...file, findings: file.findings.filter((_, index) => !known.has(fingerprints[index]!)) };
    }),
  };
}

/** Why the baseline was not written, as a sentence; undefined when it was. Only a baseline is ever written over. */
export async function writeBaseline(
  io: CliIo,
  baseline: string,
  report: FindingReport,
): Promise<string | undefined> {
  const findings = report.files.flatMap((file) => {
    const named = asNamed(io, baseline, file);
    const fingerprints = fingerprintsOf(named);
    return file.findings.map((finding, index) => ({
      fingerprint: fingerprints[index]!,
      file: named.label,
      line: regionOf(file, finding.span).line,
      rule: finding.rule,
    }));
  });
  const text = jsonText({ made_by: MADE_BY, version: 1, findings });
  const isOwn = (there: string): true | string =>
    SCHEMA.safeParse(parsedJson(there)).success ||
    "is not a baseline and is left as it is. Give another name";
  const outcome = await io.files.write(path.resolve(io.cwd, baseline), text, isOwn);
  return outcome && `\`${baseline}\` ${outcome.reason}.`;
}
