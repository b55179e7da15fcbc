/**
 * Shapes of programs that grow: each is a name, a way to write it in a size, and the largest size up to which its cost has
 * to stay in proportion. The sizes are far beyond what people write; what is cut off with a finding costs no more there.
 */

export type Files = Readonly<Record<string, string>>;

export interface Shape {
  readonly name: string;
  /** The file that is asked about is `a.finish`. */
  readonly files: (size: number) => Files;
  readonly from: number;
  /** The stated limit. */
  readonly to: number;
}

const times = (size: number, line: (idx: number) => string): string =>
  Array.from({ length: size }, (_, idx) => line(idx)).join("");

/** One text that ends where it ends. */
const text = (name: string, from: number, to: number, write: (size: number) => string): Shape => ({
  name,
  from,
  to,
  files: (size) => ({ "a.finish": write(size) }),
});

const PIECE = "piece p {\n  surface s {\n    shape area 1 m2\n    wood pine\n  }\n}\n";
const JOB = `${PIECE}job j {\n  piece p\n  start 2027-03-08\n  apply r to s\n}\n`;
const MATERIAL =
  "material m {\n  family waterborne polyurethane\n  covers 10 m2/L\n  recoat 2 h to 24 h\n}\n";

/** Letters and lines: nothing of it means anything. */
const LETTERS: readonly Shape[] = [
  text("blanks behind an open quote", 1000, 128_000, (size) => `recipe r {\n  note "${" ".repeat(size)}x`),
  text(
    "blanks and a brace behind an open quote",
    1000,
    128_000,
    (size) => `recipe r {\n  note "${" {".repeat(size / 2)}x`,
  ),
  text("open quotes", 1000, 32_000, (size) => times(size, () => 'note "\n')),
  text("backslashes in a text", 1000, 128_000, (size) => `recipe r {\n  note "${"\\".repeat(size)}`),
  text(
    "dashes in a title",
    1000,
    64_000,
    (size) => `material m "${"-".repeat(size)} no lye" {\n  family acrylic paint\n}\n`,
  ),
  text(
    "blanks in a title",
    1000,
    64_000,
    (size) => `material m "no${" ".repeat(size)}lye" {\n  family acrylic paint\n}\n`,
  ),
  text(
    "words in a title",
    1000,
    64_000,
    (size) =>
      `material m "${"free of no ".repeat(size / 11)}lye" {\n  family paint stripper\n}\n${RECIPE_OF("m")}${JOB}`,
  ),
  text(
    "words of silicone in a title",
    1000,
    64_000,
    (size) =>
      `material m "${"contains a ".repeat(size / 11)}${"silicone furniture ".repeat(size / 20)}" {\n  family paste wax\n}\n${RECIPE_OF("m")}${JOB}`,
  ),
  text(
    "a long title",
    1000,
    128_000,
    (size) => `recipe r "${"lang ".repeat(size / 5)}" {\n  step dust\n}\n${JOB}`,
  ),
  text("a long name", 1000, 128_000, (size) => `recipe ${"r".repeat(size)} {\n  step dust\n}\n`),
  text("a long number", 1000, 64_000, (size) => `recipe r {\n  wait ${"9".repeat(size)} h\n}\n`),
  text("fractions", 1000, 64_000, (size) => `recipe r {\n  wait ${"1/".repeat(size / 2)} h\n}\n`),
  text("dashes in a name", 1000, 64_000, (size) => `recipe r${"-".repeat(size)} {\n}\n`),
  text("blank lines", 1000, 128_000, (size) => "\n".repeat(size)),
  text("lines of blanks", 500, 32_000, (size) => "    \n".repeat(size)),
  text(
    "blank lines before an `allow`",
    1000,
    128_000,
    (size) => `${"\n".repeat(size)}# allow late: why\nrecipe r {\n}\n`,
  ),
  text("returns without a line feed", 1000, 128_000, (size) => `# allow late: why\n${"\r".repeat(size)}`),
  text("blanks behind `# allow x`", 1000, 64_000, (size) => `# allow x${" ".repeat(size)}y\nrecipe r {\n}\n`),
  text(
    "blanks in an `# allow` without a colon",
    1000,
    64_000,
    (size) => `# allow late${" ".repeat(size)}.\nrecipe r {\n}\n`,
  ),
  text(
    "many `# allow` comments",
    250,
    8000,
    (size) => `${times(size, () => "# allow late: because\n")}recipe r {\n}\n`,
  ),
  text("many `# allow` comments with findings", 250, 4000, (size) =>
    times(size, (idx) => `# allow unknown-name: because\nrecipe r${idx} {\n  layer q${idx}\n}\n`),
  ),
  text("commas", 1000, 32_000, (size) => `recipe r {\n  step sand ${"80, ".repeat(size)}\n}\n`),
  text(
    "lines that end in commas",
    500,
    16_000,
    (size) => `recipe r {\n  step sand 80${",\n 80".repeat(size)}\n}\n`,
  ),
  text("colons", 1000, 32_000, (size) => `recipe r {\n  step dust ${":".repeat(size)}\n}\n`),
  text("open brackets", 500, 16_000, (size) => `recipe r {\n  follow a${"(".repeat(size)}\n}\n`),
  text("open braces", 500, 32_000, (size) => `recipe r ${"{".repeat(size)}\n`),
  text("closing braces", 500, 32_000, (size) => `recipe r {\n${"}\n".repeat(size)}`),
  text("marks that combine", 1000, 64_000, (size) => `recipe r "e${"\u0301".repeat(size)}" {\n}\n`),
  text("signs that are none", 500, 16_000, (size) => `recipe r {\n  step ${"€".repeat(size)}\n}\n`),
  text("signs, each on a line", 500, 8000, (size) => "€\n".repeat(size)),
  text(
    "headings in documentation",
    500,
    32_000,
    (size) => `${times(size, () => "## # heading\n")}recipe r {\n  step dust\n}\n${JOB}`,
  ),
  text(
    "marks in documentation",
    1000,
    64_000,
    (size) => `## ${"#".repeat(size)} x\nrecipe r {\n  step dust\n}\n${JOB}`,
  ),
  text(
    "blanks in documentation",
    1000,
    64_000,
    (size) => `## #${" ".repeat(size)}x\nrecipe r {\n  step dust\n}\n${JOB}`,
  ),
  text(
    "stars in documentation",
    1000,
    32_000,
    (size) => `## ${"*a _b `c [d](".repeat(size / 12)}\nrecipe r {\n  step dust\n}\n${JOB}`,
  ),
];

function RECIPE_OF(material: string): string {
  return `recipe r {\n  step strip with ${material}\n  layer ${material}\n}\n`;
}

/** Lines, blocks and names that mean something. */
const MEANING: readonly Shape[] = [
  text(
    "parameters on one line",
    125,
    4000,
    (size) => `recipe r(${times(size, (idx) => `p${idx}: material, `)}) {\n}\n`,
  ),
  text(
    "arguments on one line",
    125,
    4000,
    (size) =>
      `recipe q {\n  step dust\n}\nrecipe r {\n  follow q(${times(size, (idx) => `p${idx}: 1, `)})\n}\n`,
  ),
  text("materials", 125, 4000, (size) =>
    times(size, (idx) => `material m${idx} {\n  family acrylic paint\n}\n`),
  ),
  text("materials of one name", 125, 4000, (size) =>
    times(size, () => "material m {\n  family acrylic paint\n}\n"),
  ),
  text(
    "fields again and again",
    125,
    8000,
    (size) => `material m {\n${times(size, () => "  family acrylic paint\n")}}\n`,
  ),
  text(
    "fields that are none",
    125,
    8000,
    (size) => `material m {\n${times(size, (idx) => `  famly${idx} paint\n`)}}\n`,
  ),
  text("words that are none", 125, 8000, (size) => times(size, (idx) => `famly${idx} paint\n`)),
  text(
    "names that nobody knows",
    125,
    2000,
    (size) =>
      `${times(size, (idx) => `material name_of_paint_${idx} {\n  family acrylic paint\n}\n`)}recipe r {\n${times(size, (idx) => `  layer name_of_pant_${idx}x\n`)}}\n`,
  ),
  text(
    "arguments that nobody knows",
    125,
    2000,
    (size) =>
      `recipe q(${times(size, (idx) => `parameter_${idx}: number = 1, `)}z: number = 1) {\n  step dust\n}\nrecipe r {\n  follow q(${times(size, (idx) => `paramter_${idx}x: 1, `)}z: 1)\n}\n`,
  ),
  text(
    "recipes",
    63,
    2000,
    (size) =>
      `${MATERIAL}${times(size, (idx) => `recipe r${idx} {\n  safety dust_mask\n  step sand 120, 150\n  step dust\n  layer m x 3 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n}\n`)}`,
  ),
  text("steps", 125, 8000, (size) => `recipe r {\n${times(size, () => "  step dust\n")}}\n${JOB}`),
  text(
    "layers",
    125,
    4000,
    (size) => `${MATERIAL}recipe r {\n${times(size, () => "  layer m\n  wait until recoat\n")}}\n${JOB}`,
  ),
  text(
    "layers of other materials",
    63,
    2000,
    (size) =>
      `${times(size, (idx) => `material m${idx} {\n  family acrylic paint\n}\n`)}recipe r {\n${times(size, (idx) => `  layer m${idx}\n`)}}\n${JOB}`,
  ),
  text(
    "safety lines",
    125,
    8000,
    (size) => `recipe r {\n${times(size, () => "  safety dust_mask, gloves\n")}  step sand 80\n}\n${JOB}`,
  ),
  text(
    "notes",
    125,
    8000,
    (size) => `recipe r {\n${times(size, () => '  note "mind the grain"\n')}  step sand 80\n}\n${JOB}`,
  ),
  text(
    "blocks inside blocks",
    63,
    4000,
    (size) => `recipe r {\n${times(size, () => "layer oil_varnish x 2 {\n")}${"}\n".repeat(size)}}\n${JOB}`,
  ),
  text(
    "blocks that are never closed",
    63,
    4000,
    (size) => `recipe r {\n${times(size, () => "  layer oil_varnish x 2 {\n")}`,
  ),
  text(
    // From well beyond the depth at which what is followed is cut off: before it no recipe has the finding that says so.
    "recipes that follow each other",
    500,
    4000,
    (size) =>
      `${times(size, (idx) => `recipe r${idx === 0 ? "" : idx} {\n  follow r${idx + 1}\n}\n`)}recipe r${size} {\n  step dust\n}\n${JOB}`,
  ),
  text(
    // As above.
    "recipes that follow each other twice",
    500,
    2000,
    (size) =>
      `${times(size, (idx) => `recipe r${idx === 0 ? "" : idx} {\n  follow r${idx + 1}\n  follow r${idx + 1}\n}\n`)}recipe r${size} {\n  step dust\n}\n${JOB}`,
  ),
  text(
    "recipes that follow each other round",
    63,
    2000,
    (size) => `${times(size, (idx) => `recipe r${idx} {\n  follow r${(idx + 1) % size}\n}\n`)}`,
  ),
  // Its size is the number of `follow` lines, since the text grows with the square of the recipes.
  text("recipes that follow all others", 256, 16_384, (size) => {
    const recipes = Math.round(Math.sqrt(size));
    return times(
      recipes,
      (idx) => `recipe r${idx} {\n${times(recipes, (other) => `  follow r${other}\n`)}}\n`,
    );
  }),
  text(
    "recipes given to themselves",
    8,
    256,
    (size) =>
      `${times(size, (idx) => `recipe r${idx}(a: recipe, b: recipe) {\n  follow a(a: b, b: a)\n  follow b(a: a, b: b)\n}\n`)}recipe top {\n${times(size, (idx) => `  follow r${idx}(a: r${idx}, b: r${(idx + 1) % size})\n`)}}\n`,
  ),
  text(
    "coats out of range",
    8,
    256,
    (size) =>
      `${MATERIAL}recipe r {\n${times(size, () => "  layer m x 1000000 {\n    layer m x 1000000\n  }\n")}}\n${JOB}`,
  ),
  text(
    "coats in coats in coats",
    2,
    32,
    (size) =>
      `${MATERIAL}recipe r {\n${times(size, () => "layer m x 30 {\n")}step dust\n${"}\n".repeat(size)}}\n${JOB}`,
  ),
  text(
    "surfaces",
    63,
    2000,
    (size) =>
      `piece p {\n${times(size, (idx) => `  surface s${idx} {\n    shape area 1 m2\n    wood pine\n  }\n`)}}\nrecipe r {\n  step dust\n}\njob j {\n  piece p\n  start 2027-03-08\n  apply r to all\n}\n`,
  ),
  text(
    "pieces",
    63,
    2000,
    (size) =>
      `${times(size, (idx) => `piece p${idx} {\n  surface s {\n    shape area 1 m2\n    wood pine\n  }\n}\n`)}recipe r {\n  step dust\n}\njob j {\n${times(size, (idx) => `  piece p${idx}\n`)}  start 2027-03-08\n  apply r to all\n}\n`,
  ),
  text(
    "pieces with coats",
    16,
    256,
    (size) =>
      `${MATERIAL}${times(size, (idx) => `piece p${idx} {\n  surface s {\n    shape area 1 m2\n    wood pine\n  }\n}\n`)}recipe r {\n  layer m x 3 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n}\njob j {\n${times(size, (idx) => `  piece p${idx}\n`)}  start 2027-03-08\n  apply r to all\n}\n`,
  ),
  text(
    "jobs",
    63,
    1000,
    (size) =>
      `${PIECE}recipe r {\n  step dust\n}\n${times(size, (idx) => `job j${idx} {\n  piece p\n  start 2027-03-08\n  apply r to s\n}\n`)}`,
  ),
  text(
    "jobs after one another",
    63,
    1000,
    (size) =>
      `${PIECE}recipe r {\n  step dust\n}\n${times(size, (idx) => `job j${idx} {\n  piece p\n  start 2027-03-08\n${idx > 0 ? `  after j${idx - 1}\n` : ""}  apply r to s\n}\n`)}`,
  ),
  text(
    "jobs after themselves",
    63,
    1000,
    (size) =>
      `${PIECE}recipe r {\n  step dust\n}\n${times(size, (idx) => `job j${idx} {\n  piece p\n  after j${(idx + 1) % size}\n  apply r to s\n}\n`)}`,
  ),
  text(
    "surfaces as other jobs left them",
    63,
    1000,
    (size) =>
      `recipe r {\n  step dust\n}\n${times(size, (idx) => `piece p${idx} {\n  surface s {\n    shape area 1 m2\n    wood pine\n${idx > 0 ? `    existing as left by j${idx - 1}\n` : ""}  }\n}\njob j${idx} {\n  piece p${idx}\n  start 2027-03-08\n  apply r to s\n}\n`)}`,
  ),
  text(
    "jobs after one another with coats",
    63,
    1000,
    (size) =>
      `${MATERIAL}${PIECE}recipe r {\n  layer m\n  wait until recoat\n}\n${times(size, (idx) => `job j${idx} {\n  piece p\n  start 2027-03-08\n${idx > 0 ? `  after j${idx - 1}\n` : ""}  apply r to s\n}\n`)}`,
  ),
  text(
    "jobs after one another on surfaces of their own",
    63,
    1000,
    (size) =>
      `piece p {\n${times(size, (idx) => `  surface s${idx} {\n    shape area 1 m2\n    wood pine\n  }\n`)}}\n${times(size, (idx) => `recipe r${idx} {\n  step dust\n}\njob j${idx} {\n  piece p\n${idx > 0 ? `  after j${idx - 1}\n` : ""}  apply r${idx} to s${idx}\n}\n`)}`,
  ),
  text(
    "pieces as other jobs left them, with coats",
    63,
    1000,
    (size) =>
      `${MATERIAL}recipe r {\n  layer m\n  wait until recoat\n}\n${times(size, (idx) => `piece p${idx} {\n  surface s {\n    shape area 1 m2\n    wood pine\n${idx > 0 ? `    existing as left by j${idx - 1}\n` : ""}  }\n}\njob j${idx} {\n  piece p${idx}\n  apply r to s\n}\n`)}`,
  ),
  text(
    "pieces as jobs left them that did nothing",
    63,
    1000,
    (size) =>
      `recipe r {\n  step dust\n}\n${times(size, (idx) => `piece p${idx} {\n  surface s {\n    shape area 1 m2\n    wood pine\n${idx > 0 ? `    existing as left by j${idx - 1}\n` : ""}  }\n  surface t {\n    shape area 1 m2\n    wood pine\n  }\n}\njob j${idx} {\n  piece p${idx}\n  apply r to t\n}\njob k${idx} {\n  piece p${idx}\n  apply r to s\n}\n`)}`,
  ),
  text(
    "applies",
    63,
    1000,
    (size) =>
      `${PIECE}recipe r {\n  step dust\n}\njob j {\n  piece p\n  start 2027-03-08\n${times(size, () => "  apply r to s\n")}}\n`,
  ),
  text(
    "old films",
    63,
    4000,
    (size) =>
      `piece p {\n  surface s {\n    shape area 1 m2\n    wood pine\n    existing ${times(size, () => "alkyd paint, ")}paste wax\n  }\n}\nrecipe r {\n  step dust\n}\njob j {\n  piece p\n  apply r to s\n}\n`,
  ),
  text(
    "shapes",
    63,
    8000,
    (size) =>
      `piece p {\n  surface s {\n${times(size, () => "    shape area 1 m2\n")}    wood pine\n  }\n}\n`,
  ),
  text(
    "days without work",
    63,
    8000,
    (size) =>
      `shop h {\n  hours Mon to Fri 09:00 to 17:00\n${times(size, (idx) => `  closed 20${27 + (idx % 70)}-${String(1 + (idx % 12)).padStart(2, "0")}-${String(1 + (idx % 28)).padStart(2, "0")}\n`)}}\nrecipe r {\n  step dust\n}\n${JOB.replace("  start", "  in h\n  start")}`,
  ),
  text(
    "opening hours",
    63,
    4000,
    (size) =>
      `shop h {\n  hours ${times(size, (idx) => `Mon to Fri ${String(idx % 24).padStart(2, "0")}:00 to ${String((idx + 1) % 24).padStart(2, "0")}:00, `)}Sat 09:00 to 13:00\n}\nrecipe r {\n  step dust\n}\n${JOB.replace("  start", "  in h\n  start")}`,
  ),
  text(
    "containers",
    63,
    4000,
    (size) =>
      `material m {\n  family acrylic paint\n  covers 10 m2/L\n  sold ${times(size, (idx) => `${100 + idx} mL for ${10 + idx}.00, `)}9 L for 300.00\n}\nrecipe r {\n  layer m\n}\n${JOB}`,
  ),
  text(
    "thousands of pieces",
    250,
    1_000_000,
    (size) =>
      `${MATERIAL}recipe r {\n  layer m x 3\n}\n${JOB.replace("piece p\n  start", `piece p x ${Math.floor(size)}\n  start`)}`,
  ),
  text("`use` lines of one file", 63, 4000, (size) => times(size, () => 'use "b.finish"\n')),
  text("steps up in a `use`", 500, 16_000, (size) => `use "${"../".repeat(size)}b.finish"\n`),
];

/** Programs of many files. */
const FILES: readonly Shape[] = [
  {
    // Its size is the number of `use` lines, since the text grows with the square of the files.
    name: "files that all use each other",
    from: 256,
    to: 65_536,
    files: (size) => {
      const files = Math.round(Math.sqrt(size));
      return many(files, () => times(files, (other) => `use "${nameOf(other)}"\n`));
    },
  },
  {
    name: "files that use the next one",
    from: 32,
    to: 500,
    files: (size) =>
      many(
        size,
        (idx) => `use "${nameOf((idx + 1) % size)}"\nmaterial m${idx} {\n  family acrylic paint\n}\n`,
      ),
  },
  {
    name: "a file that uses many",
    from: 32,
    to: 500,
    files: (size) =>
      many(size, (idx) =>
        idx === 0
          ? times(size, (other) => `use "${nameOf(other)}"\n`)
          : `material m${idx} {\n  family acrylic paint\n}\n`,
      ),
  },
  {
    name: "many files opened",
    from: 250,
    to: 8000,
    files: (size) => many(size, (idx) => `material m${idx} {\n  family acrylic paint\n}\n`),
  },
  {
    name: "many files with one name in all",
    from: 63,
    to: 500,
    files: (size) =>
      many(size, (idx) =>
        idx === 0
          ? times(size, (other) => `use "${nameOf(other)}"\n`)
          : "material m {\n  family acrylic paint\n}\n",
      ),
  },
];

const nameOf = (idx: number): string => (idx === 0 ? "a.finish" : `f${idx}.finish`);

const many = (size: number, write: (idx: number) => string): Files =>
  Object.fromEntries(Array.from({ length: size }, (_, idx) => [nameOf(idx), write(idx)]));

export const SHAPES: readonly Shape[] = [...LETTERS, ...MEANING, ...FILES];
