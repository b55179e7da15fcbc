/**
 * Fixes that several rules offer for what is done by hand: more coats, a sanding between them, a clear on top, an old
 * finish taken off, another material. Each writes all that the next finding would ask for, duties and waits among them.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Value } from "../../../../grammar/src/tree.ts";
import type { Fix, TextEdit } from "../findings.ts";
import { family } from "../knowledge/families.ts";
import type { FamilyName } from "../knowledge/family-names.ts";
import type { Family } from "../knowledge/family-schema.ts";
import { relation } from "../knowledge/layer-relation.ts";
import { wearShare } from "../knowledge/wear.ts";
import type { Place } from "../place.ts";
import type { Action, LayerAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type SurfaceState, topCoat } from "../surface/state.ts";
import { dewaxLines, dutiesOf, safetyLine } from "./coat-queries.ts";
import { fixOf, insertAbove, linesAbove, replaceAt } from "./texts.ts";

/** Whole lines below a statement and its block. */
const linesBelow = (place: Place, lines: readonly string[]): TextEdit => ({
  place,
  text: lines.join("\n"),
  linesBelow: true,
});

/**
 * Waits for the cure of the last film: in place of the wait that ends the work, behind another last action, or above the
 * layer that goes over the film.
 */
export function waitForCure(last: Action, over?: LayerAction): Fix {
  const title = t`Wait until it has cured`;
  const line = "wait  until cured";
  if (over) return insertAbove("undertaking", over, title, [line]);
  if (last.op !== "wait") return fixOf("undertaking", title, [linesBelow(last.place, [line])]);
  const { until, overnight, time } = last.syntax;
  const said = until ?? overnight ?? time;
  return said
    ? replaceAt(
        "undertaking",
        at(last.place, said.span.start, said.span.end),
        title,
        until ? "cured" : "until cured",
      )
    : replaceAt("undertaking", last.place, title, "wait until cured");
}

const wordOf = (name: FamilyName): string => name.replaceAll(" ", "_");

const at = (place: Place, start: number, end = start): Place => ({ ...place, span: { start, end } });

/** `layer varnish x 2 {`, its wait, and `}`; one line for one coat. */
const coatLines = (name: FamilyName, coats: number): readonly string[] =>
  coats === 1
    ? [`layer ${wordOf(name)}`]
    : [`layer ${wordOf(name)} x ${coats} {`, "  wait until recoat", "}"];

/**
 * What makes the layer of an action so many coats, each put on once the one below can be recoated. Undefined where the
 * number is not written on its own line in figures.
 */
export function moreCoats({ syntax, place }: LayerAction, coats: number): Fix | undefined {
  const { coats: written, coatsTo, material, block, between: said } = syntax;
  if (written?.kind === "name" || !material || (block && !written)) return undefined;
  // Of `x 2 to 5` three coats become `3 to 5`.
  const last = coatsTo && (countIn(coatsTo) ?? coats) <= coats ? coatsTo : written;
  const [from, to] = written ? [written.span.start, last!.span.end] : [material.span.end, material.span.end];
  const count = written ? `${coats}` : ` x ${coats}`;
  if (block || said) {
    return fixOf("change", t`Make it ${coats} coats`, [{ place: at(place, from, to), text: count }]);
  }
  const end = place.span.end;
  const between = " {\n    wait until recoat\n  }";
  return fixOf("undertaking", t`Make it ${coats} coats, each when the one below is dry`, [
    // Two edits at one place would have no order.
    ...(to === end
      ? [{ place: at(place, from, end), text: `${count}${between}` }]
      : [
          { place: at(place, from, to), text: count },
          { place: at(place, end), text: between },
        ]),
  ]);
}

const countIn = (coats: Value): number | undefined =>
  coats.kind === "quantity" ? coats.parts[0]?.number.value : undefined;

/** No more coats than these of a layer that says in figures how many there are. */
export function onlyCoats({ syntax, place }: LayerAction, coats: number): readonly Fix[] {
  const { coats: written, coatsTo } = syntax;
  if (!written || written.kind === "name" || coats < 1) return [];
  const fewest = countIn(written);
  const most =
    coatsTo && fewest !== undefined && fewest < coats
      ? coatsTo.span
      : { ...written.span, end: (coatsTo ?? written).span.end };
  const edit = { place: at(place, most.start, most.end), text: `${coats}` };
  return [fixOf("change", coats === 1 ? t`Make it ${coats} coat` : t`Make it ${coats} coats`, [edit])];
}

/** What does the lines between the coats of a layer, after all that is done there. Empty where that is not one block. */
export function betweenCoats({ syntax, place }: LayerAction, lines: readonly string[]): readonly TextEdit[] {
  const last = syntax.block?.at(-1);
  if (syntax.between || (syntax.block && (!last || last.kind === "layer"))) return [];
  const text = lines.map((line) => `\n    ${line.replace(/\s+/u, " ")}`).join("");
  return last
    ? [{ place: at(place, last.span.end), text }]
    : [{ place: at(place, place.span.end), text: ` {\n    wait until recoat${text}\n  }` }];
}

/** Sands and dusts between the coats, with the mask stated above them where it is not. */
export function sandBetweenCoats(action: LayerAction, title: string, grit: number): readonly Fix[] {
  const between = betweenCoats(action, [`step sand ${grit}`, "step dust"]);
  if (between.length === 0) return [];
  const safety = safetyLine(action, ["dust_mask"]);
  const above = safety.length > 0 ? [linesAbove(action.place, safety)] : [];
  return [fixOf("undertaking", title, [...above, ...between])];
}

// ---------------------------------------------------------------------------------------------------------------
// On top

/** Clears for the top, the easiest to live with first: what holds on most layers, then what holds on the rest. */
const TOP_CLEARS = [
  "waterborne polyurethane",
  "oil varnish",
  "dewaxed shellac",
] as const satisfies readonly FamilyName[];

const USUAL_COATS = 2;

/**
 * A clear over the last layer of a surface, which may not stay the last, in as many coats as the wear asks for; for light
 * and normal wear wax as well. They come after the waits that follow the layer.
 */
export function clearOnTop(run: SurfaceRun): readonly Fix[] {
  const top = topCoat(run.final);
  const action = top?.action;
  if (!top?.family || !action) return [];
  const clear = clearFor(top.family);
  const isHard = run.surface?.wear?.value === "hard";
  const coats = clear && isHard ? Math.ceil(1 / wearShare(family(clear), false) - 1e-6) : USUAL_COATS;
  return [
    ...(clear ? [onTop(run, action, t`Put ${translated(clear)} over it, ${coats} coats`, clear, coats)] : []),
    ...(isHard ? [] : [onTop(run, action, t`Put wax over it`, "paste wax", 1)]),
  ];
}

/** Whether it goes over a family as it is, after a wait or scuffed. */
const holdsOn = (name: FamilyName, below: Family): boolean =>
  !["no", "needs a barrier"].includes(relation(family(name), below).verdict);

/** The first clear that holds on a family without a barrier. */
const clearFor = (below: Family): FamilyName | undefined => TOP_CLEARS.find((name) => holdsOn(name, below));

/** One coat of a clear between a layer, dry or cured as the clear asks for, and the one of an action above it. */
export function clearBetween(below: Family, above: Action): readonly Fix[] {
  const clear = clearFor(below);
  if (!clear) return [];
  const mustCure = relation(family(clear), below).verdict === "fine after cure";
  return [
    insertAbove("undertaking", above, t`Put a coat of ${translated(clear)} between the two`, [
      ...(mustCure ? ["wait  until cured"] : []),
      ...safetyLine(above, dutiesOf(clear)),
      ...coatLines(clear, 1),
      "wait  until recoat",
    ]),
  ];
}

function onTop(run: SurfaceRun, action: Action, title: string, name: FamilyName, coats: number): Fix {
  const wait = waitAfter(run, action);
  return fixOf("undertaking", title, [
    linesBelow((wait ?? action).place, [
      ...(wait ? [] : ["wait  until cured"]),
      ...safetyLine(action, dutiesOf(name)),
      ...coatLines(name, coats),
      "wait  until cured",
    ]),
  ]);
}

/** The last of the waits of the same recipe that come straight after a layer and all its coats. */
function waitAfter(run: SurfaceRun, action: Action): Action | undefined {
  let last: Action | undefined;
  for (
    let index = run.moments.findLastIndex((moment) => moment.action.place === action.place) + 1;
    ;
    index += 1
  ) {
    const next = run.moments[index]?.action;
    if (next?.op !== "wait" || next.between || next.place.declaration !== action.place.declaration)
      return last;
    last = next;
  }
}

// ---------------------------------------------------------------------------------------------------------------
// Off

/**
 * Takes an old finish off before a layer that needs the wood: sands it off solid wood and boards, strips it off veneer and
 * plywood, whose face is thin. None where a layer of this work is on it already, or where it is not of wood. Where the
 * old finish may hold lead the engine takes the fix away again.
 */
export function takeOldFinishOff(run: SurfaceRun, before: SurfaceState, action: LayerAction): readonly Fix[] {
  const substrate = run.surface?.substrate;
  const isWood = substrate && !["laminate", "metal", "unknown"].includes(substrate.kind);
  if (!isWood || before.layers.length === 0 || before.layers.some(({ origin }) => origin === "new"))
    return [];
  const isThin = substrate.kind === "plywood" || substrate.veneerMm !== undefined;
  const first = before.wax && !isThin ? dewaxLines(action) : [];
  return isThin
    ? [insertAbove("undertaking", action, t`Strip the old finish first`, strippingLines(action))]
    : [
        insertAbove("undertaking", action, t`Sand the old finish off first`, [
          ...first,
          ...(before.grease && first.length === 0 ? ["step  clean with soap", "wait  overnight"] : []),
          ...safetyLine(action, ["dust_mask"]),
          "step  sand 80, 120, 180",
          "step  dust",
        ]),
      ];
}

const strippingLines = (action: Action): readonly string[] => [
  ...safetyLine(action, [...new Set([...dutiesOf("paint stripper"), ...dutiesOf("mineral spirits")])]),
  "step  strip with paint_stripper",
  "step  clean with mineral_spirits",
];

// ---------------------------------------------------------------------------------------------------------------
// Something else

/** A stain laid thin on the film below instead of wiped into the wood; none where the line says how it goes on. */
export const layAsToner = ({ syntax, place }: LayerAction): readonly Fix[] =>
  syntax.tails.some(({ kind }) => kind === "wiped" || kind === "as")
    ? []
    : [fixOf("change", t`Lay it thin, as toner`, [{ place: at(place, place.span.end), text: ", as toner" }])];

/** The same in water, which leaves the layer below alone: a stain laid thin on it, or a clear. */
export function inWaterInstead(action: LayerAction, below: Family): readonly Fix[] {
  const { material } = action.syntax;
  const role = action.use.material?.family?.role;
  const title = (name: FamilyName): string => t`Put ${translated(name)} on instead`;
  if (role === "stain" && action.toner && material) {
    const edit = {
      place: at(action.place, material.span.start, material.span.end),
      text: "waterborne_stain",
    };
    return [fixOf("change", title("waterborne stain"), [edit])];
  }
  const clear = (["waterborne polyurethane", "waterborne acrylic"] as const).find((name) =>
    holdsOn(name, below),
  );
  return role === "clear" && clear ? [putOnInstead(action, title(clear), clear, action.coats)] : [];
}

/** Another material instead, in so many coats; the tails of the line go with the old one, its block stays. */
export function putOnInstead(action: LayerAction, title: string, name: FamilyName, coats = 1): Fix {
  const { place } = action;
  const { block, material } = action.syntax;
  const [first = "", ...rest] = coatLines(name, coats).map((line) => line.replace(/^layer /u, ""));
  const text = block ? `${wordOf(name)} x ${coats}` : [first, ...rest.map((line) => `  ${line}`)].join("\n");
  const safety = safetyLine(action, dutiesOf(name));
  const isStated = safety.length > 0 || (coats > 1 && !block);
  return fixOf(isStated ? "undertaking" : "change", title, [
    ...(safety.length > 0 ? [linesAbove(place, safety)] : []),
    { place: at(place, material?.span.start ?? place.span.end, place.span.end), text },
  ]);
}
