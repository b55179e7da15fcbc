/**
 * What the air of a shop keeps, and what its jobs give off: grams an hour that its own change of air holds under each
 * limit, and for every job the hour of most and the shift that asks for most air. It proves nothing safe.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { DEFAULT_MIXING_FACTOR } from "../../core/fumes/dilution-air.ts";
import { jobFumes } from "../../core/fumes/job-fumes.ts";
import { gramsKeptPerH, SHIFT_H } from "../../core/fumes/room-air.ts";
import { exposureLimitMgM3, type Solvent } from "../../core/knowledge/solvents.ts";
import { gramsText } from "../../core/measure/figures.ts";
import { formatNumber } from "../../core/measure/format-amount.ts";
import type { Shop } from "../../core/model/model.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { fumesBasis, worstAir } from "../../views/fumes/fumes-facts.ts";
import { jobPeak } from "../../views/fumes/fumes-hours.ts";
import { code, firstFew, nested } from "../markdown.ts";

/** For the jobs done in this shop. */
export function shopFumes(shop: Shop, results: readonly JobResult[]): readonly string[] {
  const jobs = results.flatMap((result) => {
    const items = jobItems(result);
    return items.length > 0 ? [nested(t`fumes of ${code(result.job.name)}`, items)] : [];
  });
  if (jobs.length === 0) return [];
  return [...keptTexts(shop, results), ...firstFew(jobs, (job) => job, 4), fumesBasis()];
}

function jobItems(result: JobResult): readonly string[] {
  const peak = jobPeak(result);
  if (!peak) return [];
  const worst = worstAir(result);
  return [
    t`${gramsText(result.totals.voc_g ?? 0)} in all, most ${gramsText(peak.grams)} in the hour from ${peak.from}`,
    ...(worst ? [`${worst.name} ${gramsText(worst.grams)}, ${worst.air} (${worst.working})`] : []),
  ];
}

/** `keeps mineral spirits under 350 mg/m3 …` for every vapour of these jobs. */
function keptTexts({ room }: Shop, results: readonly JobResult[]): readonly string[] {
  const airChanges = room?.value.airChanges;
  if (!room || airChanges === undefined) return [];
  const flow = room.value.m3 * airChanges;
  const solvents = new Set(
    results.flatMap((result) =>
      jobFumes(result).coats.flatMap(({ liquids }) =>
        liquids.flatMap(({ solvent, grams }) => (solvent && grams > 0 ? [solvent] : [])),
      ),
    ),
  );
  return [...solvents].flatMap((solvent) => keptText(solvent, flow) ?? []);
}

function keptText(solvent: Solvent, flow: number): string | undefined {
  const limit = exposureLimitMgM3(solvent);
  if (limit === undefined) return undefined;
  const kept = gramsKeptPerH(flow, limit);
  const sum = `${formatNumber(flow, 1)} m3/h × ${formatNumber(limit / 1000, 3)} g/m3 / ${DEFAULT_MIXING_FACTOR} = ${formatNumber(kept, 1)} g/h`;
  return t`its air keeps ${translated(solvent.name)} under ${formatNumber(limit, 0)} mg/m3 up to ${sum}, × ${SHIFT_H} h = ${gramsText(kept * SHIFT_H)} in a shift`;
}
