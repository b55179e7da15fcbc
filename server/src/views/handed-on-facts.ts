/** What of a job was asked for by name, as it stands on what is handed on. */
import { t } from "../../../grammar/src/translate.ts";
import { moneyText } from "../core/measure/figures.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { HANDED_ON, type HandedOn } from "./handed-on.ts";
import { capital } from "./sheet/words.ts";

export interface HandedOnFact {
  readonly name: string;
  readonly text: string;
}

/** In the order of `HANDED_ON`; nothing for what the job does not say. */
export function handedOnFacts(result: JobResult, asked: readonly HandedOn[]): readonly HandedOnFact[] {
  return HANDED_ON.flatMap((what) => {
    const text = asked.includes(what) ? TEXTS[what](result) : undefined;
    return text ? [{ name: capital(what), text }] : [];
  });
}

const TEXTS: Readonly<Record<HandedOn, (result: JobResult) => string | undefined>> = {
  owner: ({ job }) => job.owner,
  people: ({ job }) => listOf(job.records.map(({ facts }) => facts.by)),
  prices: ({ totals, shop }) => {
    const figure = (name: string, amount: number | null): readonly string[] =>
      amount === null ? [] : [`${name} ${moneyText(amount, shop?.currency)}`];
    return [
      ...figure(t`materials`, totals.material_cost),
      ...figure(t`labour`, totals.labour_cost),
      ...figure(t`in all`, totals.total_cost),
    ].join(", ");
  },
  delivery: ({ job }) => job.delivery,
  photos: ({ job }) => listOf(job.records.map(({ facts }) => facts.photo)),
};

/** Each once, in the order of the record. */
const listOf = (texts: readonly (string | undefined)[]): string =>
  [...new Set(texts.flatMap((text) => text ?? []))].join(", ");
