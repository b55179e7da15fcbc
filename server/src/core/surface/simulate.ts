/**
 * Runs a list of actions over one surface, as "What steps do" of the language reference says, and keeps the state
 * before and after every action. Pure; one small function a verb.
 */
import type { DayAndNightAir } from "../air/wait-factor.ts";
import { COARSEST_TAKES_FILM, materialTakenMm } from "../knowledge/abrasives.ts";
import type { Family, Role } from "../knowledge/family-schema.ts";
import { namesChemical } from "../knowledge/named-chemicals.ts";
import type { Surface } from "../model/model.ts";
import { dryFilmUm, mixSolids } from "../quantities/film.ts";
import { coatWetUm } from "../quantities/laydown.ts";
import type { Action, LayerAction, MaterialUse, StepAction, WaitAction } from "./actions.ts";
import { dryingTimes, timesInMeasuredAir } from "./drying-time.ts";
import { workedAreaM2 } from "./part-of-surface.ts";
import {
  type Abrasion,
  type Coat,
  type Dries,
  type Filling,
  hasReached,
  isBare,
  lastPutOn,
  type Moment,
  materialOf,
  type Stage,
  type SurfaceState,
  waitedOf,
} from "./state.ts";

export interface SimulationInput {
  readonly initial: SurfaceState;
  readonly actions: readonly Action[];
  readonly air?: DayAndNightAir;
  /** Hours that `wait overnight` is sure to bring, begun so many hours after the last task; undefined: not known. */
  readonly overnightHours: (waited: number | undefined) => number;
  /** Hours for which the shop is surely still closed so many hours after the last task; none where it is not given. */
  readonly closedHours?: (waited: number) => number;
  /** Its area is for `takes … min/m2`; absent when not known. */
  readonly surface?: Pick<Surface, "areaM2" | "shapes">;
}

/**
 * More coats than this are no finish, and more of anything else lying on a surface no work; what is oldest is forgotten,
 * so that the longest of recipes takes its time step by step.
 */
const MOST_KEPT = 200;

/** The list with one more, and the oldest gone where there are too many. */
const withOneMore = <T>(list: readonly T[], item: T): readonly T[] =>
  list.length < MOST_KEPT ? [...list, item] : [...list.slice(1), item];

/** One coat more; where there are too many, the lowest of the new ones is gone. */
function withCoat(layers: readonly Coat[], coat: Coat): readonly Coat[] {
  const lowest = layers.length < MOST_KEPT ? -1 : layers.findIndex(({ origin }) => origin === "new");
  const isFull = lowest >= 0 && layers.length - lowest >= MOST_KEPT;
  return [...(isFull ? layers.toSpliced(lowest, 1) : layers), coat];
}

export function simulate(input: SimulationInput): readonly Moment<Action>[] {
  const moments: Moment<Action>[] = [];
  let state = input.initial;
  let waited: number | undefined = 0;
  for (const action of input.actions) {
    if (action.op === "layer") state = advance(state, action.restedHours ?? 0);
    const before = byHands(action) ? whenOpen(input, state, waited) : state;
    const after =
      action.op === "wait" && action.overnight
        ? advance(before, input.overnightHours(waited))
        : perform(input, before, action);
    const dries = action.op === "wait" && action.until ? driesTo(before, action.until) : undefined;
    moments.push({ action, before, after, dries });
    waited = waitedSinceTask(waited, action, before, after);
    state = after;
  }
  return moments;
}

const byHands = ({ op }: Action): boolean => op === "step" || op === "layer";

/** The state once the shop is open again: `wait 9 h` lasts until the morning where nobody works in the evening. */
function whenOpen(
  { closedHours }: SimulationInput,
  state: SurfaceState,
  waited: number | undefined,
): SurfaceState {
  const closed = waited ? (closedHours?.(waited) ?? 0) : 0;
  if (closed <= 0) return state;
  return { ...state, clock: { ...state.clock, closed: state.clock.closed + closed } };
}

/** Hours from the last task to the end of this action; undefined after a wait whose length is not known. */
function waitedSinceTask(
  waited: number | undefined,
  action: Action,
  before: SurfaceState,
  after: SurfaceState,
): number | undefined {
  if (byHands(action)) return 0;
  if (waited === undefined || action.op === "open" || after.clock.unknown > before.clock.unknown)
    return undefined;
  return waited + after.clock.hours - before.clock.hours;
}

export function finalState(initial: SurfaceState, moments: readonly Moment<Action>[]): SurfaceState {
  return moments[moments.length - 1]?.after ?? initial;
}

function perform(input: SimulationInput, state: SurfaceState, action: Action): SurfaceState {
  switch (action.op) {
    case "step":
      return advance(
        onPart(state, action, withSilicone(state, action, performStep(input, state, action))),
        takenHours(action, workedAreaM2(input.surface, action.part)),
      );
    case "layer":
      return advance(performLayer(input, state, action), 0);
    case "wait":
      return performWait(state, action);
    case "note":
      return state;
    case "open":
      return { ...state, certain: false };
  }
}

/** Only stated hands-on time counts as drying time: estimates are no ground for saying that a film is dry. */
function takenHours({ takes }: StepAction, areaM2: number): number {
  if (!takes) return 0;
  return "hours" in takes ? takes.hours : takes.hoursPerM2 * areaM2;
}

/**
 * After work on a part of the surface: what it brings there, dust and water, is there; what it takes or prepares is still to
 * be done on the rest.
 */
function onPart(before: SurfaceState, { part }: StepAction, after: SurfaceState): SurfaceState {
  if (!part) return after;
  const { layers, openBelow, abrasions, woodTakenMm, settled } = before;
  return {
    ...after,
    wax: before.wax ?? after.wax,
    grease: before.grease ?? after.grease,
    residue: before.residue ?? after.residue,
    dust: before.dust ?? after.dust,
    silicone: before.silicone ?? after.silicone,
    layers: after.layers.length > layers.length ? after.layers : layers,
    openBelow,
    abrasions,
    woodTakenMm,
    settled,
  };
}

/** Lets time pass; `undefined` is a time that is not known. */
function advance(state: SurfaceState, hours: number | undefined): SurfaceState {
  if (hours !== undefined && hours <= 0) return state;
  const { clock } = state;
  return {
    ...state,
    clock:
      hours === undefined
        ? { ...clock, unknown: clock.unknown + 1 }
        : { ...clock, hours: clock.hours + hours },
  };
}

// ---------------------------------------------------------------------------------------------------------------
// Waits

function performWait(state: SurfaceState, wait: WaitAction): SurfaceState {
  if (wait.until) return waitUntil(state, wait.until);
  return advance(state, wait.hours);
}

/** `until` counts from the end of the last layer or filling put on here; without one there is nothing to wait for. */
function waitUntil(state: SurfaceState, stage: Stage): SurfaceState {
  const dries = driesTo(state, stage);
  if (!dries) return state;
  const { of: anchor } = dries;
  // A material that states no time for the stage has nothing to wait for.
  const needed = materialOf(anchor)?.family ? (dries.time?.hours ?? 0) : undefined;
  const waited = waitedOf(state, anchor);
  // How much of it an earlier wait of unknown length has brought already is not known either.
  const unknown = needed === undefined || (waited.open && waited.hours < needed);
  const missing = unknown ? undefined : Math.max(0, needed - waited.hours);
  return markReached(advance(state, missing), anchor, stage);
}

function driesTo(state: SurfaceState, stage: Stage): Dries | undefined {
  const anchor = lastPutOn(state);
  const time = anchor?.drying[stage];
  return anchor && { of: anchor, ...(time ? { time } : {}) };
}

function markReached(state: SurfaceState, anchor: Coat | Filling, stage: Stage): SurfaceState {
  if (anchor.reached.includes(stage)) return state;
  const marked = { ...anchor, reached: [...anchor.reached, stage] };
  return "use" in marked
    ? { ...state, fillings: state.fillings.with(-1, marked) }
    : { ...state, layers: state.layers.with(state.layers.indexOf(anchor as Coat), marked) };
}

// ---------------------------------------------------------------------------------------------------------------
// Steps

function performStep(input: SimulationInput, state: SurfaceState, step: StepAction): SurfaceState {
  switch (step.verb) {
    case "clean":
      return clean(state, step);
    case "dewax":
      return dewax(state, step);
    case "strip":
      return takeAllFilms({ ...state, ...SCRAPED_OFF, residue: { place: step.place } });
    case "scrape":
      return takeAllFilms({ ...state, ...SCRAPED_OFF, residue: scraped(state, step) });
    case "sand":
    case "scuff":
      return abrade(withoutFlakes(state), step);
    case "dust":
      return { ...withoutFlakes(state), dust: undefined };
    case "dampen":
      return dampen(state, step);
    case "bleach":
      return {
        ...dampen(state, step),
        bleached: { place: step.place, ...(step.use ? { use: step.use } : {}), rinsed: false },
      };
    case "fill":
    case "glue":
      return fill(input, state, step);
    case "mask":
      return {
        ...state,
        masks: withOneMore(state.masks, { what: step.what ?? "", place: step.place, from: state.nextSerial }),
      };
    case "unmask":
      return { ...state, masks: [] };
    case "remove":
      return { ...state, removed: withOneMore(state.removed, { what: step.what ?? "", place: step.place }) };
    case "refit":
      return { ...state, removed: state.removed.filter((part) => part.what !== step.what) };
    case "distress":
      return { ...state, distressed: { place: step.place }, dust: { place: step.place } };
    case "buff":
      return step.use ? buffWith(input, state, step) : state;
    case "test":
      return { ...state, tests: withOneMore(state.tests, { what: step.what ?? "", place: step.place }) };
    default:
      return state;
  }
}

const SCRAPED_OFF = { wax: undefined, grease: undefined, dust: undefined };

/** What a stripper has left before stays there, and wax is smeared about. */
function scraped(state: SurfaceState, { place }: StepAction): NonNullable<SurfaceState["residue"]> {
  const isWaxed = state.wax !== undefined || state.layers.some(({ family }) => family?.role === "wax");
  if (state.residue && !state.residue.dry) return state.residue;
  return isWaxed ? { place } : { place, dry: true };
}

const withoutFlakes = (state: SurfaceState): SurfaceState =>
  state.residue?.dry ? { ...state, residue: undefined } : state;

/** Takes the wax, and with a solvent the grease as well: mineral spirits clean what they dewax. */
function dewax(state: SurfaceState, step: StepAction): SurfaceState {
  const isSolvent =
    step.use?.material?.family?.role === "solvent" && step.use.material.family.carrier !== "water";
  return {
    ...state,
    wax: undefined,
    grease: isSolvent ? undefined : state.grease,
    layers: state.layers.filter((coat) => coat.family?.role !== "wax"),
  };
}

/** Takes grease, dust, loose dirt and stripping residue, not wax; its water raises the grain of bare wood. */
function clean(state: SurfaceState, step: StepAction): SurfaceState {
  const rinsed = {
    ...state,
    grease: undefined,
    dust: undefined,
    residue: undefined,
    bleached: state.bleached && { ...state.bleached, rinsed: true },
  };
  return mayBeWatery(step) ? dampen(rinsed, step) : rinsed;
}

/** What a step is done with is in water, or nothing else is known of it. */
const mayBeWatery = ({ use }: StepAction): boolean =>
  ["water", "none"].includes(use?.material?.family?.carrier ?? "water");

/** Nobody dampens or bleaches anything but bare wood, so a surface of which nothing is known counts as bare here. */
function dampen(state: SurfaceState, step: StepAction): SurfaceState {
  const bare = step.verb === "clean" ? isBare(state) : state.layers.length === 0;
  // A cleaning that does not say with what may be a dry one: grain may rise, but nothing is sure to be wet.
  const inWood = bare && (step.verb !== "clean" || step.use !== undefined);
  const wet = { ...state, wet: wetHere(state, step, inWood) };
  return bare && !state.settled ? { ...wet, raised: { place: step.place } } : wet;
}

const wetHere = ({ clock }: SurfaceState, { place }: StepAction, inWood: boolean) => ({
  place,
  since: clock,
  reached: [],
  inWood,
});

/** What the words of a wet sanding name in place of water. */
const OTHER_LUBRICANT =
  /\b(?:oils?|oiled|spirits?|solvents?|turpentine|turps|naphtha|alcohol|paraffin|kerosene|thinners?|wax|varnish|shellac)\b/iu;

/** Paper that is kept wet is kept wet with water unless the line names something else. */
const wetsWithWater = (step: StepAction): boolean =>
  step.wet && mayBeWatery(step) && !OTHER_LUBRICANT.test(step.what ?? "");

const holdsSilicone = ({ material }: MaterialUse): boolean =>
  material !== undefined && namesChemical(material, "silicone");

/**
 * Silicone that a polish leaves, and what takes it: on a film a wipe with a solvent does, soap and water do not. Sanding
 * to the wood carries it into the pores, where it stays. Where it is doubtful whether any is left, none is.
 */
function withSilicone(before: SurfaceState, step: StepAction, after: SurfaceState): SurfaceState {
  const { verb, use } = step;
  if (verb === "strip" || verb === "scrape") return withoutSilicone(after);
  const isWiped = verb === "clean" || verb === "dewax" || (verb === "buff" && use !== undefined);
  if (isWiped && use && holdsSilicone(use)) {
    return { ...after, silicone: { use, place: step.place, inWood: isBare(after) } };
  }
  if (!before.silicone || before.silicone.inWood) return after;
  if (verb === "sand" && isBare(after)) return { ...after, silicone: { ...before.silicone, inWood: true } };
  return isWiped && verb !== "buff" && !isSoapAndWater(use) ? withoutSilicone(after) : after;
}

const withoutSilicone = (state: SurfaceState): SurfaceState =>
  state.silicone ? { ...state, silicone: undefined } : state;

function isSoapAndWater(use: MaterialUse | undefined): boolean {
  const name = use?.material?.family?.name;
  return use === undefined || name === "cleaner" || name === "water";
}

const takeAllFilms = (state: SurfaceState): SurfaceState => ({
  ...state,
  distressed: undefined,
  layers: [],
  openBelow: false,
  abrasions: [],
});

const isWetOil = (state: SurfaceState): boolean => {
  const top = state.layers.at(-1);
  return (
    top?.origin === "new" && top.family?.drying === "oxidising" && hasReached(state, top, "touch") !== "yes"
  );
};

/** Oil that is still wet is sanded in: what comes off stays in it as a paste that is wiped into the pores. */
const makesSlurry = (state: SurfaceState, step: StepAction): boolean => step.wet && isWetOil(state);

/** Floors and worn tops are begun with such paper. */
const COARSEST_TAKES_DIRT = 60;

/**
 * Sanding whose coarsest grit is 100 or coarser takes every old film, but only drives wax in; finer sanding and scuffing
 * abrade what is on top. On bare wood the grits take wood. All of it leaves dust.
 */
function abrade(state: SurfaceState, step: StepAction): SurfaceState {
  const abrasion: Abrasion = {
    verb: step.verb === "scuff" ? "scuff" : "sand",
    grits: step.grits,
    place: step.place,
    wet: step.wet,
  };
  const toWood = step.verb === "sand" && step.grits.some((grit) => grit <= COARSEST_TAKES_FILM);
  // Under coats of this recipe an old film is out of reach, and they are no old film themselves.
  const covered = state.layers.some((coat) => coat.origin === "new");
  const base =
    toWood && !covered && (state.layers.length > 0 || state.openBelow) ? takeAllFilms(state) : state;
  const bare = base.layers.length === 0 && !base.openBelow;
  // The dirt of use goes with the wood that so coarse a paper takes; wax and silicone do not. Common practice, no source.
  const isCoarse = step.verb === "sand" && step.grits.some((grit) => grit <= COARSEST_TAKES_DIRT);
  const isFreed = bare && !covered && isCoarse && !base.wax && !base.silicone;
  const taken = bare ? step.grits.reduce((sum, grit) => sum + materialTakenMm(grit), 0) : 0;
  return {
    ...base,
    layers: abradeTop(base.layers, abrasion),
    fillings: base.fillings.map((filling) => ({ ...filling, sanded: true })),
    abrasions: withOneMore(base.abrasions, abrasion),
    woodTakenMm: base.woodTakenMm + taken,
    grease: isFreed ? undefined : base.grease,
    wet: step.wet ? (bare && wetsWithWater(step) ? wetHere(state, step, true) : base.wet) : undefined,
    // The grain is knocked down.
    raised: undefined,
    settled: base.settled || base.raised !== undefined,
    dust: makesSlurry(state, step) ? base.dust : { place: step.place },
    wax: base.wax && { ...base.wax, drivenIn: base.wax.drivenIn || toWood },
  };
}

/** The coat on top is abraded; wax is no hindrance, so the coat under it is as well. */
function abradeTop(layers: readonly Coat[], abrasion: Abrasion): readonly Coat[] {
  const below = layers.findLastIndex((coat) => coat.family?.role !== "wax");
  return layers.map((coat, i) =>
    i === below || i === layers.length - 1
      ? { ...coat, abrasions: withOneMore(coat.abrasions, abrasion) }
      : coat,
  );
}

function fill(input: SimulationInput, state: SurfaceState, step: StepAction): SurfaceState {
  if (!step.use) return state;
  return {
    ...state,
    fillings: withOneMore(state.fillings, {
      use: step.use,
      place: step.place,
      since: state.clock,
      reached: [],
      drying: dryingTimes(input.air, step.use.material),
      sanded: false,
      from: state.nextSerial,
    }),
  };
}

/** Buffing with a wax leaves wax on the surface, like a layer of it. */
function buffWith(input: SimulationInput, state: SurfaceState, step: StepAction): SurfaceState {
  const material = step.use?.material;
  if (material?.family?.role !== "wax") return state;
  const coat: Coat = {
    serial: state.nextSerial,
    origin: "new",
    what: step.use!.name,
    family: material.family,
    material,
    place: step.place,
    wiped: true,
    toner: false,
    since: state.clock,
    reached: [],
    drying: dryingTimes(input.air, material),
    filmUm: 0,
    masked: state.masks.map(({ what }) => what),
    abrasions: [],
  };
  return {
    ...state,
    distressed: undefined,
    layers: withCoat(state.layers, coat),
    nextSerial: state.nextSerial + 1,
    wax: { place: step.place, drivenIn: false },
  };
}

// ---------------------------------------------------------------------------------------------------------------
// Layers

function performLayer(input: SimulationInput, state: SurfaceState, layer: LayerAction): SurfaceState {
  const material = layer.use.material;
  const family = material?.family;
  const film = coatFilmUm(layer);
  const coat: Coat = {
    serial: state.nextSerial,
    origin: "new",
    what: layer.use.name,
    family,
    material,
    place: layer.place,
    action: layer,
    wiped: layer.wiped,
    toner: layer.toner,
    since: state.clock,
    reached: [],
    drying: layer.measuredAir
      ? timesInMeasuredAir(layer.measuredAir, input.air, material)
      : dryingTimes(input.air, material),
    filmUm: film,
    masked: state.masks.map(({ what }) => what),
    abrasions: [],
  };
  const raises = family?.drying === "waterborne" && isBare(state) && !state.settled;
  // Around a part what lies on the surface stays, and so does what was done for the next coat.
  const covered = layer.part ? state : coveredBy(state, layer);
  return {
    ...covered,
    layers: withCoat(state.layers, coat),
    nextSerial: state.nextSerial + 1,
    raised: raises ? { place: layer.place } : covered.raised,
    wax: family?.role === "wax" ? { place: layer.place, drivenIn: false } : covered.wax,
    silicone:
      family?.role === "wax" && holdsSilicone(layer.use)
        ? { use: layer.use, place: layer.place, inWood: isBare(state) }
        : covered.silicone,
  };
}

/**
 * What lay on the surface is under the coat now: it is that coat's trouble, not the next one's. Silicone stays where
 * only something soaks in, and places worn to the wood stay open under a stain.
 */
function coveredBy(state: SurfaceState, { use }: LayerAction): SurfaceState {
  const family = use.material?.family;
  return {
    ...state,
    abrasions: [],
    wax: undefined,
    grease: undefined,
    residue: undefined,
    dust: undefined,
    bleached: undefined,
    wet: undefined,
    distressed: family && !SEALS.has(family.role) ? state.distressed : undefined,
    silicone: family && !family.buildsFilm ? state.silicone : undefined,
  };
}

/** Roles of layers that close bare wood. */
const SEALS: ReadonlySet<Role> = new Set(["clear", "oil", "wax", "paint", "primer", "sealer"]);

/**
 * Whether a layer leaves a thickness that counts: wiped layers, stains, conditioners, oils, waxes and auxiliaries leave
 * none.  A filler that is not wiped off does, though no coat can be built of it.
 */
export const layerBuildsFilm = (family: Family, wiped: boolean): boolean =>
  (family.buildsFilm || family.role === "filler") && !wiped;

/** Dry film of one coat, micrometres: (wet, or 1000 / covers × laydown) × the mix's solids by volume. Undefined when not known. */
export function coatFilmUm(layer: LayerAction): number | undefined {
  const material = layer.use.material;
  if (!material?.family) return undefined;
  if (!layerBuildsFilm(material.family, layer.wiped)) return 0;
  if (layer.session && layer.wetUm === undefined) return undefined;
  const wet = coatWetUm(layer);
  const solids = layerSolids(layer);
  return wet === undefined || solids === undefined ? undefined : dryFilmUm(wet, solids);
}

function layerSolids(layer: LayerAction): number | undefined {
  const own = layer.use.material?.solids?.value;
  if (own === undefined) return undefined;
  const hardener = layer.hardener?.use.material?.solids?.value;
  const volumes = layer.hardener?.volumes;
  // In whatever parts equal solids are mixed, they stay the same.
  if (hardener !== undefined && volumes === undefined && hardener !== own) return undefined;
  return mixSolids({
    solidsPercent: own,
    ...(hardener !== undefined && volumes ? { hardener: { ...volumes, solidsPercent: hardener } } : {}),
    ...(layer.thinned
      ? {
          thinned: {
            a: layer.thinned.a,
            b: layer.thinned.b,
            solidsPercent: layer.thinned.thinner.material?.solids?.value ?? 0,
          },
        }
      : {}),
    ...(layer.tinted
      ? {
          tint: {
            percent: layer.tinted.percent,
            solidsPercent: layer.tinted.tint.material?.solids?.value ?? 0,
          },
        }
      : {}),
  });
}
