import { negates } from "../knowledge/denials.ts";

/** A kind of thing that texts name. Each is made once, so that answers can be remembered by it. */
export interface Words {
  readonly pattern: RegExp;
}

const words = (pattern: RegExp): Words => ({ pattern });

/** Burning off, blowlamps, gas rings. A torch alone may be a lamp to look with. */
export const OPEN_FLAME = words(
  /\bblow-?\s?(?:torch|lamp)(?:e?s)?\b|\b(?:gas|propane|butane|plumber['’]s|roofing|weed)[\s-]+(?:torch(?:es)?|burners?|flames?|rings?|hobs?|stoves?|cookers?)\b|\btorch(?:ed|ing)\b|\b(?:naked|open|bare|live)[\s-]+(?:flames?|lights?|fires?)\b|\b(?:have|having|light|lit|smoke|smoking|over)\s+(?:a|your|his|her|the|one['’]s)\s+(?:quick\s+|last\s+)?(?:smoke|cigarettes?|cigars?|pipe|fag)\b|\bbunsen\b|\bprimus\b|\bcamp(?:ing)?[\s-]+stove\b|\bspirit[\s-]+(?:lamp|burner|stove)\b|\bover\s+(?:a|the|an open)\s+(?:fire|flame|candle|burner)\b|\b(?:burn|burns|burnt|burned|burning|flame|flamed|flaming|singe|singed|singeing|char|charred|charring)\b(?:\s+\S+){0,5}?\s+(?:off|away)\b|\b(?:pass|play|hold|move|run|wave)\b(?:\s+\S+){0,4}?\s+flames?\b|\b(?:shou[\s-]+sugi[\s-]+ban|yakisugi)\b|\b(?:light|lit|ignite|set\s+fire\s+to|flamb[eé])\b(?:\s+\S+){0,4}?\s+(?:alcohol|spirits?|shellac|vapou?rs?|solvents?)\b/giu,
);

/** Something that is hot enough to light a vapour, or that warms what should not be warmed. */
export const HOT_PLACE = words(
  /\b(?:stove|wood[\s-]?burner|log[\s-]burner|hair[\s-]?dr[iy]er|radiator|(?:fan|gas|electric|space|patio|paraffin|kerosene|oil|water|infra-?\s?red)[\s-]+(?:heater|fire)|heater|boiler|furnace|fireplace|hearth|pilot[\s-]+(?:light|flame)|hot[\s-]?plate|hob|cooker|oven|gas[\s-]+ring|brazier|candle|fire(?:side)?)s?\b(?![\s-]+(?:doors?|escapes?|exits?|extinguishers?|blankets?|buckets?|brigade|alarms?|proof|watch|codes?|safe|resist\w*|covers?|shelf|shelves|grilles?|enamel|black|white|paint|polish|cleaners?|suits?|wax|screen|surround|tongs|irons?|dogs?|wood|place\s+(?:surround|screen))\b)/giu,
);

/** Charring wood on purpose. */
export const CHARRING = words(/\b(?:char|charred|charring|scorch\w*|shou[\s-]+sugi[\s-]+ban|yakisugi)\b/giu);

const FLAMMABLE_THINGS =
  /\b(?:oils?|turpentine|turps|spirits?|varnish(?:es)?|lacquers?|shellac|thinners?|solvents?|wax(?:es)?|beeswax|alcohol|stains?|polish|paints?)\b/iu;
const WARMS =
  /\b(?:warm|warms|warmed|warming|heat|heats|heated|heating|boil|boils|boiled|boiling|melt|melts|melted|melting|simmer\w*|cook\w*)\b/iu;

/** Whether a clause warms oil, wax, varnish or a solvent over a flame, or on or in something hot. */
export const warmsSomethingFlammable = (text: string): boolean =>
  [clauseNaming(text, OPEN_FLAME), clauseNearHeat(text)].some(
    (clause) => clause !== undefined && WARMS.test(clause) && FLAMMABLE_THINGS.test(clause),
  );

/** Going near it, or putting something there. */
const NEAR =
  /\b(?:beside|besides|by|near|nearby|next\s+to|close\s+to|against|before|in\s+front\s+of|over|above|on|onto|at|under|into|in|round|around)\s+(?:(?:the|a|an|its|our|warm|hot|lit|glowing|iron|old|little|gas|running)\s+){0,4}$/iu;

/** The other way round: "light the stove next to it". */
const BESIDE_IT =
  /^\s+(?:\w+\s+){0,2}?(?:next\s+to|beside|close\s+to|near|under|in\s+front\s+of)\s+(?:it|them|this)\b/iu;
const HAIR_DRYER = /^hair/iu;
const WITH_IT = /\b(?:with|use|using)\s+(?:the|a|your)\s+(?:\w+\s+)?$/iu;

export const HEAT_GUN = words(
  /\bheat[\s-]?guns?\b|\bhot[\s-]?air(?:[\s-]+(?:guns?|strippers?|blowers?|pistols?))\b|\bhot[\s-]?air\b|\bheat[\s-]+strippers?\b/giu,
);

export const SANDING_MACHINE = words(
  /\b(?:belt|drum|edge|disc|disk|orbital|orbit|random[\s-]?orbit(?:al)?|palm|detail|delta|power|machine|finishing|eccentric|floor|spindle|stroke|wide-?belt)[\s-]+sand(?:er|ers|ing|ed)\b|\bsanders?\b|\bsanding[\s-]+machines?\b|\b(?:angle|disc)[\s-]+grinders?\b|\bgrinders?\b|\bwire[\s-]+(?:wheels?|brush\s+in\s+(?:a|the)\s+drill)\b|\bsand(?:ed|ing)?\s+(?:\S+\s+){0,4}?(?:by|with\s+(?:a|the))\s+machine\b|\brandom[\s-]?orbit(?:al|als)?\b/giu,
);

export const BLASTING = words(
  /\b(?:sand|shot|soda|bead|grit|abrasive|media|dry[\s-]?ice|ice|walnut[\s-]shell|glass|vapou?r)[\s-]?blast(?:ing|ed|er|s)?\b|\bblast(?:ed|ing)?\s+(?:\S+\s+){0,3}?with\b|\bneedle[\s-]?guns?\b/giu,
);

/** What is loud beside the ear: sanders, planers, pumps, guns that need a compressor. */
export const LOUD_MACHINE = words(
  new RegExp(
    `${SANDING_MACHINE.pattern.source}|${BLASTING.pattern.source}|\\b(?:planers?|thicknessers?|routers?|circular\\s+saws?|table\\s+saws?|chop\\s+saws?|chain\\s?saws?|compressors?|airless[\\s-]+(?:pumps?|rigs?|units?|machines?)|shop[\\s-]?vacs?|jointers?|spindle\\s+moulders?)\\b`,
    "giu",
  ),
);

const HEPA = /\bHEPA\b|\bH-?class\b|\bclass[\s-]?H\b|\bH1[34]\b/iu;
const WETTED =
  /\b(?:wet(?:ted|ting|ly)?|damp(?:ened|ed)?|mist(?:ed|ing)?|soak(?:ed|ing)?|moist(?:ened)?|spray(?:ed)?\s+with\s+water)\b/iu;

export const saysHepa = (text: string): boolean => HEPA.test(text);
export const saysWet = (text: string): boolean =>
  WETTED.test(text) && !/\b(?:not|never|no)\s+wet/iu.test(text);

/** The clause that names it and does not deny it, or undefined. */
export function clauseNaming(text: string, { pattern }: Words): string | undefined {
  return clauses(text).find((clause) =>
    [...clause.matchAll(pattern)].some(
      (match) =>
        !isDeniedBy(clause.slice(0, match.index)) &&
        !DENIED_AFTER.test(clause.slice(match.index + match[0].length)),
    ),
  );
}

/** The clause that puts something near a hot place, and does not forbid it. */
export function clauseNearHeat(text: string): string | undefined {
  return clauses(text).find((clause) =>
    [...clause.matchAll(HOT_PLACE.pattern)].some((match) => {
      const before = clause.slice(0, match.index);
      const after = clause.slice(match.index + match[0].length);
      const isNear =
        NEAR.test(before) || BESIDE_IT.test(after) || (HAIR_DRYER.test(match[0]) && WITH_IT.test(before));
      return isNear && !isDeniedBy(before) && !DENIED_AFTER.test(after);
    }),
  );
}

const clauses = (text: string): readonly string[] =>
  text.split(/[;:!?\n]|\.(?=\s|$)|,\s*(?=(?:but|then|and\s+then|instead|just|only)\b)/iu);

/** A denial, or words that keep the work away from it or put it out. */
const isDeniedBy = (before: string): boolean => negates(before) || KEPT_AWAY.test(before);

const KEPT_AWAY =
  /\b(?:avoid\w*|forbid\w*|except|away\s+from|far\s+from|clear\s+of|off\s+the|beware|than|(?:put|blow|turn|switch|snuff)\w*\s+(?:out|off)|extinguish\w*|shut\w*\s+(?:down|off)|remove[ds]?|ban\w*|danger\w*)\b/iu;
const DENIED_AFTER =
  /^[^,]*?\b(?:(?:is|are|was|were|stays?|stay|kept|keep|must\s+be|be|being)\s+(?:\w+\s+){0,2}?(?:off|out|cold|forbidden|banned|prohibited|not|never|away|far|dangerous|disconnected)|(?:must|may|should|can|do|does|will)\s*n(?:o|['’])t|(?:must|may|should|can|will)\s+never|(?:turned|switched|put|shut|kept)\s+(?:off|out|away|down)|forbidden|prohibited|next\s+door|(?:when|once|after)\b[^,]*\bcured?)\b|^\s*(?:well\s+|far\s+)?away\b/iu;

/** The highest temperature that a text names, in °C. */
export function hottestC(text: string): number | undefined {
  const named = [
    ...text.matchAll(
      /(\d{2,4}(?:\.\d+)?)\s*(?:(?:°|º|deg(?:rees?)?\.?)\s*)?(C|F|Celsius|Fahrenheit|centigrade)\b/giu,
    ),
  ].map(([, number, unit]) => (/^f/iu.test(unit!) ? ((Number(number) - 32) * 5) / 9 : Number(number)));
  return named.length > 0 ? Math.max(...named) : undefined;
}
