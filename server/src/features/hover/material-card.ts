/**
 * The card of a material: every figure, and whether the can states it or the family supplies it, with its source.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { builtInName } from "../../core/knowledge/built-in-materials.ts";
import { materialDuties } from "../../core/knowledge/duties.ts";
import type { Family } from "../../core/knowledge/family-schema.ts";
import { exactFilm, humidityText, moneyText, percentText } from "../../core/measure/figures.ts";
import { formatAmount, formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import { builtInMaterial } from "../../core/model/lower-material.ts";
import type { Fact, Material } from "../../core/model/model.ts";
import { dryFilmUm, wetFilmUm } from "../../core/quantities/film.ts";
import { sentence } from "../../core/sentence.ts";
import { familyTold } from "../family-told.ts";
import { code, docText, heading, paragraphs, plain, table } from "../markdown.ts";

/** Heading, documentation, figures, what a litre costs. */
export function materialCard(material: Material, say: ShownFigures): string {
  const family =
    material.familyName === undefined ? t`material without a family` : translated(material.familyName);
  const what = material.builtIn ? t`the built-in ${family}` : family;
  return paragraphs(
    heading(material.name, material.title, what),
    docText(material.docs),
    material.docs || !material.family ? "" : docOf(material.family),
    figures(material, say),
    filmLine(material),
    shopping(material),
  );
}

/** A family by itself: what it is, its figures, and the duties that it brings. */
export function familyCard(family: Family, say: ShownFigures): string {
  const kind = [
    translated(family.role),
    family.binder === "none" ? "" : t`bound by ${translated(family.binder)}`,
    family.carrier === "none" ? "" : t`carried by ${translated(family.carrier)}`,
    family.drying === "none" ? "" : t`dries by ${translated(DRYING[family.drying])}`,
  ].filter((part) => part !== "");
  const duties = materialDuties(family).map(({ duty, reason }) => t`\`${duty}\` (it ${reason})`);
  return paragraphs(
    `**${translated(family.name)}**, ${kind.join(", ")}`,
    docOf(family),
    figures(builtInMaterial(builtInName(family.name), family), say),
    duties.length > 0 ? t`Brings ${duties.join(", ")}.` : "",
  );
}

const docOf = (family: Family): string => translated(familyTold(family).doc ?? "");

export const DRYING: Readonly<Record<Exclude<Family["drying"], "none">, string>> = {
  waterborne: "the loss of its water",
  oxidising: "taking up oxygen",
  reacting: "reaction of its two parts",
  "solvent release": "the loss of its solvent",
};

function figures(material: Material, shown: ShownFigures): string {
  const rows = ROWS.flatMap(({ word, source, say }) => {
    const said = say(material, shown);
    return said ? [[word, said.text, originText(said.origin, material.family, source ?? word)]] : [];
  });
  return table([t`figure`, t`value`, t`from`], rows);
}

function originText(origin: Fact<unknown>["origin"], family: Family | undefined, word: string): string {
  if (origin === "stated") return t`stated`;
  if (origin === "default") return t`taken where nothing is said`;
  const source = family && familyTold(family).sources[word];
  return source ? t`family: ${plain(translated(source))}` : t`family`;
}

interface Said {
  readonly text: string;
  readonly origin: Fact<unknown>["origin"];
}

interface FigureRow {
  readonly word: string;
  /** The key of the family's source, where it is called otherwise. */
  readonly source?: string;
  readonly say: (material: Material, shown: ShownFigures) => Said | undefined;
}

const said = <T>(fact: Fact<T> | undefined, text: (value: T) => string): Said | undefined =>
  fact && { text: text(fact.value), origin: fact.origin };

const ROWS: readonly FigureRow[] = [
  {
    word: "covers",
    say: (m, { covers }) => said(m.covers, covers),
  },
  { word: "solids", say: (m) => said(m.solids, (value) => t`${percentText(value)} by volume`) },
  { word: "touch", say: (m) => said(m.touch, formatDuration) },
  {
    word: "recoat",
    say: (m) =>
      said(m.recoat, ({ earliest, latest }) =>
        latest === undefined
          ? t`from ${formatDuration(earliest)}`
          : t`${formatDuration(earliest)} to ${formatDuration(latest)}`,
      ),
  },
  { word: "stackable", say: (m) => said(m.stackable, formatDuration) },
  { word: "sandable", say: (m) => said(m.sandable, formatDuration) },
  { word: "cure", say: (m) => said(m.cure, formatDuration) },
  {
    word: "rated",
    say: (m, { air }) => said(m.rated, air),
  },
  {
    word: "limits",
    say: (m, { degrees }) =>
      said(m.limits, ({ low, high, humidity }) =>
        [
          low !== undefined && high !== undefined ? t`${degrees(low)} to ${degrees(high)}` : "",
          low !== undefined && high === undefined ? t`from ${degrees(low)}` : "",
          humidity === undefined ? "" : t`up to ${humidityText(humidity)}`,
        ]
          .filter((part) => part !== "")
          .join(", "),
      ),
  },
  { word: "voc", say: (m) => said(m.voc, (value) => formatAmount({ dimension: "density", value })) },
  { word: "sheen", source: "sheens", say: (m) => said(m.sheen, (value) => plain(translated(value))) },
  { word: "colour", source: "ambering", say: (m) => said(m.colour, (value) => plain(translated(value))) },
  {
    word: "thin",
    source: "thinners",
    say: (m) =>
      said(m.thin, ({ thinner, upTo }) =>
        upTo === undefined ? translated(thinner) : t`${translated(thinner)}, up to ${percentText(upTo)}`,
      ),
  },
  { word: "flash", say: (m, { degrees }) => said(m.flash, degrees) },
  { word: "pot_life", source: "potLife", say: (m) => said(m.potLife, formatDuration) },
  {
    word: "rags",
    source: "ragsSelfHeat",
    say: (m) => (m.selfHeatingRags.value ? said(m.selfHeatingRags, () => t`self-heating`) : undefined),
  },
  {
    word: "mix",
    say: (m) =>
      said(m.mix, ({ a, b, hardener, by }) =>
        hardener === undefined
          ? t`${a}:${b} by ${translated(by)}, both parts in one pack`
          : t`${a}:${b} by ${translated(by)}, with ${code(hardener)}`,
      ),
  },
  {
    word: "density",
    say: (m) => said(m.density, (value) => `${formatNumber(value / 1000, 3)} kg/L`),
  },
  { word: "cut", say: (m) => said(m.cut, (value) => `${formatNumber(value, 0)} g/L`) },
  { word: "batch", say: (m) => said(m.batch, (value) => value) },
  {
    word: "on_hand",
    say: (m, { litres }) =>
      m.onHandPlace && {
        text: litres(m.onHand),
        origin: "stated",
      },
  },
];

/** Wet and dry film of one coat as the label has it. */
function filmLine(material: Material): string {
  const { covers, solids, family } = material;
  if (!covers || !family?.buildsFilm) return "";
  const wet = wetFilmUm(covers.value);
  const rate = formatNumber(covers.value, 3);
  const wetText = t`wet film 1000 / ${rate} m2/L = ${exactFilm(wet)}`;
  if (!solids) return `${sentence(wetText)}.`;
  const dry = dryFilmUm(wet, solids.value);
  return t`One coat: ${wetText}; dry ${exactFilm(wet)} × ${percentText(solids.value)} = ${exactFilm(dry)}.`;
}

/** Prices by the litre, the cheapest marked. */
function shopping(material: Material): string {
  const { sold } = material;
  if (sold.length === 0) return material.builtIn ? "" : t`No \`packs\`: what it costs is not computed.`;
  const perLitre = sold.map(({ litres, price }) => price / litres);
  const cheapest = Math.min(...perLitre);
  const sizes = sold.map(({ label, price }, i) => {
    const prices = [moneyText(price, undefined), moneyText(perLitre[i]!, undefined)] as const;
    return sold.length > 1 && perLitre[i] === cheapest
      ? t`${label} for ${prices[0]} (${prices[1]} a litre, the cheapest)`
      : t`${label} for ${prices[0]} (${prices[1]} a litre)`;
  });
  return t`Sold: ${sizes.join("; ")}.`;
}
