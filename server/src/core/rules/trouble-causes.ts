/** Which causes of a trouble are seen in the record and the recipe of this very coat. */
import { t } from "../../../../grammar/src/translate.ts";
import type { CauseId, Trouble } from "../knowledge/troubles.ts";
import { humidityText } from "../measure/figures.ts";
import { formatDuration, formatNumber } from "../measure/format-amount.ts";
import { figuresIn, type ShownFigures, type UnitSystem } from "../measure/shown-figures.ts";
import { stageHours, topCoat } from "../surface/state.ts";
import { hoursApart, type RecordedCoat } from "./recorded-coats.ts";
import { coatName, useName } from "./texts.ts";

/** A cause with what is seen of it, as a clause; without, it may be and nothing tells. */
export interface RankedCause {
  readonly id: CauseId;
  readonly seen?: string;
}

/** Those that are seen first, each group in the order in which they are likely. */
export function rankedCauses(
  trouble: Trouble,
  coat: RecordedCoat,
  units: UnitSystem,
  plannedLitres?: number,
): readonly RankedCause[] {
  const say = figuresIn(units);
  const causes = trouble.causes.map((id): RankedCause => {
    const seen = SEEN[id](coat, say, plannedLitres);
    return { id, ...(seen === undefined ? {} : { seen }) };
  });
  return [
    ...causes.filter(({ seen }) => seen !== undefined),
    ...causes.filter(({ seen }) => seen === undefined),
  ];
}

type Look = (coat: RecordedCoat, say: ShownFigures, plannedLitres?: number) => string | undefined;

/** The air of the line, else that of the shop. */
const airOf = ({ record, run }: RecordedCoat) => record.facts.air ?? run.shop?.air?.value;

/** Damper or colder than this, films cloud or stay soft; warmer, they skin over (common practice, no source). */
const DAMP = 65;
const COLD_C = 15;
const WARM_C = 27;
/** So many times the planned amount is a coat that is too thick. */
const MUCH = 1.25;

const SEEN: Readonly<Record<CauseId, Look>> = {
  "damp air": (coat) => {
    const humidity = airOf(coat)?.humidity;
    return humidity !== undefined && humidity >= DAMP
      ? t`the air was at ${humidityText(humidity)}`
      : undefined;
  },
  "cold air": (coat, say) => {
    const air = airOf(coat);
    const low = coat.moment.action.use.material?.limits?.value.low;
    return air && air.temperature < Math.max(COLD_C, low ?? 0)
      ? t`the air was at ${say.degrees(air.temperature)}`
      : undefined;
  },
  "warm air": (coat, say) => {
    const air = airOf(coat);
    return air && air.temperature > WARM_C ? t`the air was at ${say.degrees(air.temperature)}` : undefined;
  },
  "a coat put on too soon": ({ below, record }) => {
    const needed = below && stageHours(below.coat, "recoat");
    if (!below || needed === undefined) return undefined;
    const { most } = hoursApart(below.record, record);
    return most < needed - 1e-6
      ? t`${coatName(below.coat)} below had ${formatDuration(Math.max(0, most))} of its ${formatDuration(needed)}`
      : undefined;
  },
  "a coat put on too late": ({ below, record }) => {
    const latest = below?.coat.material?.recoat?.value.latest;
    if (!below || latest === undefined || below.coat.abrasions.length > 0) return undefined;
    return hoursApart(below.record, record).least > latest
      ? t`${coatName(below.coat)} below was past its ${formatDuration(latest)} and not sanded`
      : undefined;
  },
  "too thick a coat": ({ record, moment }, _, planned) => {
    const { laid } = moment.action;
    const used = record.facts.used?.dimension === "volume" ? record.facts.used.value : undefined;
    if (used !== undefined && planned !== undefined && used > planned * MUCH)
      return t`${formatNumber(used / planned, 1)} times the planned amount went on`;
    if (laid === "full") return t`the coat is laid full`;
    return laid === "flooded" ? t`the coat is laid flooded` : undefined;
  },
  "wax below": ({ moment }) => (moment.before.wax ? t`wax lay on the surface` : undefined),
  "silicone below": ({ moment }) =>
    moment.before.silicone ? t`a polish with silicone was on the surface` : undefined,
  "grease below": ({ moment }) => (moment.before.grease ? t`the old surface was not cleaned` : undefined),
  "dust below": ({ moment }) =>
    moment.before.dust ? t`the dust of the sanding was not taken off` : undefined,
  "residue below": ({ moment }) =>
    moment.before.residue ? t`what the stripping left was not cleaned off` : undefined,
  "raised grain": ({ moment }) => (moment.before.raised ? t`the grain was up` : undefined),
  "uncured oil below": ({ below, record }) => {
    const isOil = below?.coat.family?.drying === "oxidising";
    const cured = below && stageHours(below.coat, "cured");
    if (!below || !isOil || cured === undefined) return undefined;
    const { most } = hoursApart(below.record, record);
    return most < cured ? t`${coatName(below.coat)} below was ${formatDuration(most)} old` : undefined;
  },
  "solvent on a soft coat": ({ moment, below, record }) => {
    const isSolvent = moment.action.use.material?.family?.drying === "solvent release";
    const cured = below && stageHours(below.coat, "cured");
    if (
      !isSolvent ||
      !below ||
      cured === undefined ||
      topCoat(moment.before)?.family?.drying === "solvent release"
    )
      return undefined;
    return hoursApart(below.record, record).most < cured
      ? t`its solvents reached ${coatName(below.coat)} before that had cured`
      : undefined;
  },
  "rolling or spraying": ({ moment }) =>
    ["roller", "foam", "spray", "hvlp", "airless"].includes(moment.action.method)
      ? t`it was put on by ${moment.action.method}`
      : undefined,
  "another product": ({ run, record, moment }) =>
    run.record?.differences.some((each) => each.kind === "another material" && each.record === record)
      ? t`${useName(moment.action.use)} came out of another can than planned`
      : undefined,
};
