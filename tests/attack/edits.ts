/**
 * Random edits over programs of several files: after them an analyst says what one from scratch says, and holds the texts
 * that the edits left. The same through the language server, with ranges and versions as an editor sends them.
 */
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analyst } from "../../server/src/features/types.ts";
import { sampleText } from "../harness/samples.ts";
import { type Asked, askEverything } from "./ask-everything.ts";
import { serverAnswers } from "./edited-server.ts";
import { type Attack, crash, type Flaw, faultKeeper } from "./flaws.ts";
import { hostileText } from "./hostile-texts.ts";
import { resolve } from "./resolve.ts";
import { piecesOf, SOUND_TEXTS, WORDS } from "./sound-texts.ts";

type Edit =
  /** Replaces some pieces, counted around the text, by others. */
  | {
      readonly how: "replace";
      readonly file: number;
      readonly at: number;
      readonly length: number;
      readonly put: string;
    }
  /** Puts back what the file was in the beginning. */
  | { readonly how: "restore"; readonly file: number }
  | { readonly how: "whole"; readonly file: number; readonly put: string }
  | { readonly how: "remove"; readonly file: number }
  | { readonly how: "absent"; readonly file: number };

export interface Edits {
  readonly texts: readonly string[];
  readonly edits: readonly Edit[];
  /** After how many edits somebody looks, and where. */
  readonly every: number;
  readonly offset: number;
  readonly throughServer: boolean;
}

/** A job, its recipes, its stock and its shop, and a file by itself. */
const NAMES = ["mistakes.finish", "reading-tables.finish", "recipes.finish", "shop.finish", "stock.finish"];
const samples = NAMES.map(sampleText);

const file = fc.nat(NAMES.length - 1);
const put = fc.oneof(
  fc.constant(""),
  fc.constantFrom(...WORDS),
  fc.constantFrom(
    "\n",
    "}\n",
    "{\n",
    '"',
    "# allow late: a reason\n",
    "## words\n",
    'use "stock.finish"\n',
    "\ud800",
    "  ",
  ),
  fc
    .constantFrom(...SOUND_TEXTS)
    .chain((text) => fc.constantFrom(...text.split("\n")).map((line) => `${line}\n`)),
);

const edit: fc.Arbitrary<Edit> = fc.oneof(
  {
    arbitrary: fc.record({
      how: fc.constant("replace" as const),
      file,
      at: fc.nat(100_000),
      length: fc.oneof(fc.nat(3), fc.nat(40)),
      put,
    }),
    weight: 12,
  },
  { arbitrary: fc.record({ how: fc.constant("restore" as const), file }), weight: 2 },
  { arbitrary: fc.record({ how: fc.constant("whole" as const), file, put: hostileText }), weight: 1 },
  { arbitrary: fc.record({ how: fc.constant("remove" as const), file }), weight: 1 },
  { arbitrary: fc.record({ how: fc.constant("absent" as const), file }), weight: 1 },
);

const input: fc.Arbitrary<Edits> = fc.record({
  texts: fc.oneof(
    { arbitrary: fc.constant(samples), weight: 3 },
    {
      arbitrary: fc.array(fc.constantFrom(...SOUND_TEXTS), {
        minLength: NAMES.length,
        maxLength: NAMES.length,
      }),
      weight: 1,
    },
  ),
  edits: fc.array(edit, { minLength: 1, maxLength: 16 }),
  every: fc.integer({ min: 1, max: 4 }),
  offset: fc.nat(100_000),
  throughServer: fc.nat(3).map((chance) => chance === 0),
});

export const edits: Attack<Edits> = {
  name: "edits",
  input,
  runs: 25,
  cpuSeconds: 120,
  async check(given) {
    try {
      return given.throughServer ? await serverFlaws(given) : analystFlaws(given);
    } catch (error) {
      return [crash("edits", error)];
    }
  },
};

type Texts = ReadonlyMap<string, string | undefined>;

/** What the texts are after an edit; a file without one is not there. */
function edited(texts: Texts, how: Edit, initial: readonly string[]): Texts {
  const name = NAMES[how.file]!;
  const result = new Map(texts);
  if (how.how === "remove" || how.how === "absent") result.set(name, undefined);
  else if (how.how === "restore") result.set(name, initial[how.file]!);
  else if (how.how === "whole") result.set(name, how.put);
  else {
    const pieces = piecesOf(texts.get(name) ?? "");
    const at = how.at % (pieces.length + 1);
    result.set(name, [...pieces.slice(0, at), how.put, ...pieces.slice(at + how.length)].join(""));
  }
  return result;
}

function analystFlaws({ texts, edits: all, every, offset }: Edits): readonly Flaw[] {
  const keeper = faultKeeper();
  const analyst = createAnalyst({ resolve, onFault: keeper.onFault });
  let now: Texts = new Map(NAMES.map((name, idx) => [name, texts[idx]]));
  give(analyst, now);
  ask(analyst, offset);
  const flaws: Flaw[] = [];
  for (const [idx, each] of all.entries()) {
    const before = now;
    now = edited(now, each, texts);
    const name = NAMES[each.file]!;
    const text = now.get(name);
    if (text !== undefined) analyst.setFile(name, text);
    else if (each.how === "absent") analyst.setAbsent(name, "it does not exist");
    else if (before.get(name) !== undefined) analyst.removeFile(name);
    if ((idx + 1) % every !== 0 && idx < all.length - 1) continue;
    giveAbsent(analyst);
    const lost = NAMES.filter((one) => analyst.analysis().text(one) !== now.get(one));
    if (lost.length > 0)
      return [{ kind: "lost", detail: "the analyst holds another text than the edits left" }];
    const fresh = createAnalyst({ resolve });
    give(fresh, now);
    const [mine, theirs] = [ask(analyst, offset), ask(fresh, offset)];
    flaws.push(...theirs.flatMap((asked) => asked.flaws), ...differences(mine, theirs), ...keeper.flaws());
    if (flaws.length > 0) return flaws;
  }
  return flaws;
}

function give(analyst: Analyst, texts: Texts): void {
  for (const [name, text] of texts) if (text !== undefined) analyst.setFile(name, text);
  giveAbsent(analyst);
}

const giveAbsent = (analyst: Analyst): void => {
  for (const missing of analyst.missingFiles()) analyst.setAbsent(missing, "it does not exist");
};

function ask(analyst: Analyst, offset: number): readonly Asked[] {
  const analysis = analyst.analysis();
  return NAMES.map((name) =>
    askEverything(analysis, name, [offset % ((analysis.text(name) ?? "").length + 1)]),
  );
}

/** Files come in the order in which they were given, which may be another one here. */
const ORDERED_BY_FILES = /^(?:workspaceSymbols|references|editsForMoves|rename|incomingCalls)/;

function differences(mine: readonly Asked[], theirs: readonly Asked[]): readonly Flaw[] {
  return mine.flatMap(({ answers }, idx) =>
    answers.flatMap(({ question, answer }, at): readonly Flaw[] => {
      if (ORDERED_BY_FILES.test(question)) return [];
      const other = theirs[idx]?.answers[at]?.answer;
      return isDeepStrictEqual(answer, other)
        ? []
        : [
            {
              kind: "stale",
              detail: `${question.replace(/ \d+$/, "")} after edits is not that from scratch`,
            },
          ];
    }),
  );
}

/** Through a server: open files are edited in ranges, and a second server is given what came of it. */
async function serverFlaws({ texts, edits: all, offset }: Edits): Promise<readonly Flaw[]> {
  let now: Texts = new Map(NAMES.map((name, idx) => [name, texts[idx]]));
  const states = [now];
  for (const each of all) {
    now = edited(now, each, texts);
    states.push(now);
  }
  const mine = await serverAnswers(states, offset);
  const theirs = await serverAnswers([now], offset);
  return mine.flatMap(({ question, answer }, idx): readonly Flaw[] =>
    isDeepStrictEqual(answer, theirs[idx]?.answer)
      ? []
      : [{ kind: "stale", detail: `${question} of the server after edits is not that from scratch` }],
  );
}
