/**
 * A kept plan as a file: JSON of a form of our own, so that a plan on the wall holds while the recipes change.
 *
 * Files are named from the folder of the plan, so that it holds wherever the command runs.
 */
import path from "node:path";
import * as z from "zod/mini";
import { jsonText } from "../escape/json.ts";
import type { KeptPlan } from "../views/schedule/kept-plan.ts";
import { type CliIo, UsageError } from "./io.ts";

const MADE_BY = "finishwright schedule";

const MOMENT = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/u));
const COUNT = z.int().check(z.minimum(1));

const SCHEMA = z.object({
  made_by: z.literal(MADE_BY),
  version: z.literal(1),
  jobs: z.array(
    z.object({
      file: z.string(),
      job: z.string(),
      sessions: z.array(
        z.object({
          begun: MOMENT,
          person: COUNT,
          does: z.array(
            z.object({
              surface: z.string(),
              piece: COUNT,
              what: z.string(),
              time: COUNT,
              start: MOMENT,
              end: MOMENT,
            }),
          ),
        }),
      ),
    }),
  ),
});

/** How the plan in a file names a recipe. */
export const nameInPlan =
  (io: CliIo, plan: string) =>
  (file: string): string =>
    path.relative(path.dirname(path.resolve(io.cwd, plan)), file).replaceAll("\\", "/");

/** Throws a `UsageError` where the file cannot be read or is no plan. */
export async function readKeptPlan(io: CliIo, plan: string): Promise<KeptPlan> {
  const read = await io.files.read(path.resolve(io.cwd, plan));
  if ("reason" in read)
    throw new UsageError(`The plan \`${plan}\` ${read.reason}. \`--keep ${plan}\` makes one.`);
  const parsed = parsedPlan(read.text);
  if (!parsed)
    throw new UsageError(
      `\`${plan}\` is not a plan that this version has kept. \`--keep\` makes one; give it a new name.`,
    );
  return parsed;
}

function parsedPlan(text: string): KeptPlan | undefined {
  try {
    return SCHEMA.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

/** Why the plan was not kept, as a sentence; undefined when it was. Only a kept plan is ever written over. */
export async function writeKeptPlan(
  io: CliIo,
  plan: string,
  { jobs }: KeptPlan,
): Promise<string | undefined> {
  const isOwn = (there: string): true | string =>
    parsedPlan(there) !== undefined || "is not a kept plan and is left as it is. Give another name";
  const text = jsonText({ made_by: MADE_BY, version: 1, jobs });
  const outcome = await io.files.write(path.resolve(io.cwd, plan), text, isOwn);
  return outcome && `\`${plan}\` ${outcome.reason}.`;
}
