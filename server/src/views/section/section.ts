/** The cut through a surface, from its run: see `model.ts`. */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { woodByName } from "../../core/knowledge/woods.ts";
import { thicknessText } from "../../core/measure/figures.ts";
import type { Job, Substrate } from "../../core/model/model.ts";
import { coatWetUm } from "../../core/quantities/laydown.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Coat } from "../../core/surface/state.ts";
import { isTakenAsBare } from "../../core/surface/taken-as-bare.ts";
import { coatMix } from "../../core/totals/needs.ts";
import { stepNumbers } from "../sheet/procedure.ts";
import { takenAsBareText, titleOf } from "../sheet/words.ts";
import { coatFill, woodFill } from "./fills.ts";
import type { Grain, OldCoats, Section, SectionCoat, SectionWood } from "./model.ts";

/** `job` gives the litres of its coats; a recipe by itself has none. */
export function sectionOf(run: SurfaceRun, title: string, job?: Job): Section {
  const coats = newCoats(run, job);
  const films = coats.map(({ isFilm, dryUm }) => (isFilm ? dryUm : 0));
  const isKnown = films.every((film) => film !== undefined);
  return {
    title,
    wood: {
      ...sectionWood(run.surface?.substrate),
      ...(isTakenAsBare(run) ? { assumed: takenAsBareText() } : {}),
    },
    old: oldCoats(run),
    coats,
    ...(isKnown ? { filmUm: films.reduce((sum, film) => sum + film, 0) } : {}),
  };
}

// ---------------------------------------------------------------------------------------------------------------
// Wood

function sectionWood(substrate: Substrate | undefined): SectionWood {
  const name = translated(substrate?.name || "not stated");
  const veneer = substrate?.veneerMm;
  return {
    name: veneer === undefined ? name : t`${name}, veneer ${thicknessText(veneer)}`,
    grain: grainOf(substrate),
    ...(veneer === undefined ? {} : { veneerMm: veneer }),
    fill: woodFill(substrate),
  };
}

function grainOf(substrate: Substrate | undefined): Grain {
  switch (substrate?.kind) {
    case "plywood":
    case "MDF":
    case "particleboard":
      return "board";
    case "laminate":
      return "slick";
    case "metal":
      return "metal";
    case "species": {
      const wood = woodByName(substrate.name);
      if (wood === undefined) return "unknown";
      if (wood.kind === "softwood") return "softwood";
      return wood.pores === "ring" || wood.pores === "semi-ring" ? "ring-porous" : "diffuse-porous";
    }
    default:
      return "unknown";
  }
}

// ---------------------------------------------------------------------------------------------------------------
// Coats

function oldCoats(run: SurfaceRun): readonly OldCoats[] {
  const numbers = stepNumbers(run);
  const { initial, final } = run;
  const atLast = new Map(final.layers.map((coat) => [coat.serial, coat]));
  const goneAt = removals(run);
  const rows: OldCoats[] = [];
  for (const coat of initial.layers) {
    const last = atLast.get(coat.serial);
    const gone = goneAt.get(coat.serial);
    const removedBy = last || gone === undefined ? undefined : numbers[gone];
    const row: OldCoats = {
      title: coat.material ? titleOf(coat.material) : translated(coat.what),
      count: 1,
      isKept: last !== undefined,
      ...(removedBy === undefined ? {} : { removedBy }),
      isAbraded: (last?.abrasions.length ?? 0) > 0,
      fill: coatFill(coat.material, coat.family, coat.unknown),
    };
    const below = rows.at(-1);
    const isSame = below?.title === row.title && below.isKept === row.isKept;
    if (isSame) rows[rows.length - 1] = { ...row, count: below.count + 1 };
    else rows.push(row);
  }
  return rows;
}

/** For each old coat that is not there at every moment, by its serial: the index of the first moment that leaves it out. */
function removals({ initial, moments }: SurfaceRun): ReadonlyMap<number, number> {
  const goneAt = new Map<number, number>();
  let before = initial.layers;
  for (const [index, { after }] of moments.entries()) {
    // Most moments leave the coats as they are, and then there is nothing to compare.
    if (after.layers === before) continue;
    const left = new Set(after.layers.map(({ serial }) => serial));
    for (const { serial } of before) {
      if (!left.has(serial) && !goneAt.has(serial)) goneAt.set(serial, index);
    }
    before = after.layers;
  }
  return goneAt;
}

function newCoats(run: SurfaceRun, job: Job | undefined): readonly SectionCoat[] {
  const numbers = stepNumbers(run);
  // A coat is known by its serial, which it has from the action that puts it on.
  const putOn = new Map<number, number>();
  for (const [index, { before, after }] of run.moments.entries()) {
    if (after.nextSerial > before.nextSerial) putOn.set(before.nextSerial, index);
  }
  return run.final.layers.flatMap((coat): readonly SectionCoat[] => {
    const index = putOn.get(coat.serial);
    if (coat.origin !== "new" || index === undefined) return [];
    return [sectionCoat(coat, index, numbers[index] ?? 0, run, job)];
  });
}

function sectionCoat(
  coat: Coat,
  index: number,
  step: number,
  run: SurfaceRun,
  job: Job | undefined,
): SectionCoat {
  const { action, material, family } = coat;
  const isFilm = coat.filmUm !== 0;
  const wetUm = action && coatWetUm(action);
  const litres = action && job ? coatMix(job, run, action)?.litres : undefined;
  const sheen = material?.sheen?.value;
  return {
    title: material ? titleOf(material) : coat.what.replaceAll("_", " "),
    coat: action?.coat ?? 0,
    coats: action?.coats ?? 0,
    step,
    index,
    isFilm,
    ...(!isFilm || coat.filmUm === undefined ? {} : { dryUm: coat.filmUm }),
    ...(!isFilm || wetUm === undefined ? {} : { wetUm }),
    ...(litres === undefined ? {} : { litres }),
    fill: coatFill(material, family),
    isClear: family?.role === "clear" || family?.role === "sealer",
    ...(sheen === undefined ? {} : { sheen }),
    gleam: gleamOf(sheen),
    isOptional: action?.ifNeeded === true,
  };
}

/** By the order of the sheens; how wide a gleam is drawn says nothing of gloss units. */
function gleamOf(sheen: string | undefined): number {
  switch (sheen) {
    case "satin":
    case "eggshell":
      return 0.34;
    case "semi-gloss":
      return 0.66;
    case "gloss":
      return 1;
    default:
      return 0;
  }
}
