/**
 * The servers that are measured: this one, a server that answers nothing, and peers from npm, each with texts of its own
 * language that hold about as much on a line, and places in them where somebody types a decimal.
 */
import { fileURLToPath } from "node:url";

export interface Server {
  readonly name: string;
  /** What Node runs, with its arguments. */
  readonly command: readonly string[];
  readonly languageId: string;
  readonly ending: string;
  /** Asked for diagnostics, where the others publish them. */
  readonly pullsDiagnostics?: true;
  /** Waits for half a second or less after an edit, in case another follows. */
  readonly waits?: true;
  /** Tells in a second answer what needs a plan. */
  readonly plansLater?: true;
  /** It is the one that is measured; the others are to compare with. */
  readonly isMeasured?: true;
  readonly initializationOptions?: unknown;
  /** By section. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** A text of about so many lines. */
  readonly text: (lines: number) => string;
  /** Where to type, by what stands there: the beginning of a line in the middle of the text, up to a decimal point. */
  readonly places: Readonly<Record<string, RegExp>>;
}

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

const HEAD = `shop room {
  air 20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

material hall_clear {
  family waterborne polyurethane
  covers 10.5 m2/L
}

`;

/** One recipe, one piece and one job: 27 lines. */
const block = (i: number): string => `recipe coats_${i}(clear: material = hall_clear) {
  for wood
  safety dust_mask
  step sand 120, 150
  step dust
  layer clear x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait 24.5 h
  wait until cured
}

piece table_${i} {
  surface top {
    shape panel 1800.5 mm x 900 mm x 30 mm
    wood red oak
  }
}

job order_${i} {
  piece table_${i} x 2
  in room
  start 2027-03-08
  apply coats_${i} to top
}
`;

/** Whole parts, until the text has so many lines. */
const filled = (lines: number, head: string, part: (i: number) => string, end = ""): string => {
  const size = part(0).split("\n").length - 1;
  const count = Math.max(1, Math.round((lines - head.split("\n").length) / size));
  return head + Array.from({ length: count }, (_, i) => part(i)).join("") + end;
};

export const recipeText = (lines: number): string => filled(lines, HEAD, block);

/** The same without a job, so that nothing is planned. */
export const unplannedText = (lines: number): string =>
  filled(lines, HEAD, (i) => block(i).replace(/^job [^}]*\}\n/mu, "\n"));

export const FINISHWRIGHT: Server = {
  name: "Finishwright",
  command: [path("../../server/dist/server.cjs")],
  languageId: "finish",
  ending: ".finish",
  pullsDiagnostics: true,
  plansLater: true,
  isMeasured: true,
  settings: {},
  text: recipeText,
  places: {
    recipe: /^ {2}wait 24\./u,
    piece: /^ {4}shape panel 1800\./u,
    material: /^ {2}covers 10\./u,
  },
};

/** For the same messages as this server gets: what they cost by themselves. */
export const FLOOR: Server = {
  ...FINISHWRIGHT,
  name: "answers nothing",
  command: [path("peers/floor.mjs")],
  pullsDiagnostics: undefined,
  plansLater: undefined,
  isMeasured: undefined,
};

const extracted = (language: string): string =>
  path(`peers/node_modules/vscode-langservers-extracted/bin/vscode-${language}-language-server`);

export const PEERS: readonly Server[] = [
  {
    name: "Langium",
    command: [path("peers/langium.mjs")],
    languageId: "parts",
    ending: ".parts",
    settings: {},
    text: (lines) =>
      filled(
        lines,
        "",
        (i) =>
          `block part_${i} {\n  width 1800.5 mm;\n  depth 900 mm;\n  note "red oak";\n  step sand_${i} {\n    grit 120;\n    use part_${i};\n  }\n}\n\n`,
      ),
    places: { value: /^ {2}width 1800\./u },
  },
  {
    name: "JSON",
    waits: true,
    command: [extracted("json")],
    languageId: "json",
    ending: ".json",
    initializationOptions: { provideFormatter: true },
    settings: { json: { validate: { enable: true }, format: { enable: true }, resultLimit: 1_000_000 } },
    text: (lines) =>
      filled(
        lines,
        "[\n",
        (i) =>
          `  {\n    "part": ${i},\n    "width": 1800.5,\n    "wood": "red oak",\n    "grits": [120, 150],\n    "coats": { "of": "varnish", "count": 3 }\n  },\n`,
        "  {}\n]\n",
      ),
    places: { value: /^ {4}"width": 1800\./u },
  },
  {
    name: "CSS",
    waits: true,
    command: [extracted("css")],
    languageId: "css",
    ending: ".css",
    initializationOptions: { provideFormatter: true },
    settings: { css: { validate: true } },
    text: (lines) =>
      filled(
        lines,
        "",
        (i) =>
          `.part-${i} {\n  width: 1800.5px;\n  margin: 0 4px;\n  color: #a87;\n}\n\n.part-${i} > a:hover {\n  background: red;\n}\n\n`,
      ),
    places: { value: /^ {2}width: 1800\./u },
  },
  {
    name: "YAML",
    waits: true,
    command: [path("peers/node_modules/yaml-language-server/bin/yaml-language-server")],
    languageId: "yaml",
    ending: ".yaml",
    settings: {
      yaml: {
        validate: true,
        hover: true,
        completion: true,
        format: { enable: true },
        schemaStore: { enable: false },
        maxItemsComputed: 1_000_000,
      },
    },
    text: (lines) =>
      filled(
        lines,
        "",
        (i) =>
          `- part: ${i}\n  width: 1800.5\n  wood: red oak\n  grits: [120, 150]\n  coats:\n    of: varnish\n    count: 3\n`,
      ),
    places: { value: /^ {2}width: 1800\./u },
  },
];

/** Just behind the decimal point of the place nearest to the middle of the text. */
export const placeIn = (
  text: string,
  place: RegExp,
): { readonly line: number; readonly character: number } => {
  const lines = text.split("\n");
  const found = lines.flatMap((each, line) => {
    const start = place.exec(each)?.[0];
    return start === undefined ? [] : [{ line, character: start.length }];
  });
  return found[Math.floor(found.length / 2)]!;
};
