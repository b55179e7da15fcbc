/**
 * The hand-written parts of the language reference, `server/docs/language.md`: how the text is read, what is worked
 * out, and what was decided where two careful readers could differ. The tables between them are made from the words
 * themselves, by `write-language-page.ts`; a test reads every whole example here and wants it free of findings.
 */
import { LEAD_BANS } from "../src/core/knowledge/lead.ts";
import { MASS_BALANCE, PRACTICE } from "../src/core/knowledge/sources.ts";
import { LAYDOWNS } from "../src/core/quantities/laydown.ts";
import { TRANSFER_EFFICIENCY } from "../src/core/quantities/litres.ts";

const HAND_ROWS = (
  [
    ["shellac `by pad`, `cloth` or `rubber`, as a polisher does", LAYDOWNS.padded],
    ["varnish `by cloth` or `rubber`, not wiped off, unless it is a wiping varnish", LAYDOWNS.wipedOn],
    ["`flooded`", LAYDOWNS.flooded],
  ] as const
)
  .map(([how, { share, source }]) => `| ${how} | ${share} | 1 | ${source} |`)
  .join("\n");

export const INTRODUCTION = `A finish recipe is a text file, \`*.finish\`, that a furniture finisher reads aloud at the bench and a machine can work out.
You write what is done, line by line, in the words of the trade; areas, litres, cans, waits, film, fumes, dates and money follow from it, and so does what will go wrong.
Nothing that can be computed has to be written.

It advises and never certifies anything as safe: the label, the safety data sheet, local codes and licensed practice come first.
`;

/** The page that teaches the language, at the head of the reference and behind the walkthrough. */
export const ONE_PAGE = `## On one page

This is the whole language, in forty lines. Copy it, and put your own names and figures in.

\`\`\`finish
# What is in a can. Where the label is silent, the family's usual figures stand.
material hall_clear "Waterborne satin clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h  # not sooner; later only after sanding
  packs  946 mL for 28.00, 3785 mL for 84.00
}

# What is finished: its surfaces, their form, their wood, what is on them, and how they are used.
piece reading_table "Reading table" {
  built   1990
  surface top {
    shape panel 1800 mm x 900 mm x 30 mm
    wood  beech
    wear  hard
  }
}

# Where it is done: its air decides how long things dry, its hours when you can work.
shop mill_room "Old mill, ground floor" {
  air   18 C, 55 % RH
  hours Mon to Fri 09:00 to 17:00
}

# How it is done. What stands in the brackets is said anew each time, as the clear is in the job below.
recipe clear_top(clear: material, coats: number = 3) {
  safety dust_mask
  step   sand 120, 150, 180
  step   dust
  layer  clear x coats, by pad, between sand 220  # each coat waits until it can be recoated
  wait   until cured
}

# What is to be done, and by when. Litres, cans, dates, fumes and cost follow from it.
job hall_tables "Reading tables" {
  piece reading_table x 2
  in    mill_room
  start 2027-03-08 09:00
  apply clear_top(clear: hall_clear) to top
}
\`\`\`

- A line says one thing: its first word says what, the rest how much. \`{\` opens a block, \`}\` closes it, \`#\` starts a comment.
- Names of your own are written without blanks, \`hall_clear\`; a title in quotes may stand behind them.
- Every figure has its unit: \`10 m2/L\`, \`2 h\`, \`30 mm\`, \`55 % RH\`. Ranges are \`2 h to 24 h\`.
- Put \`use "stock.finish"\` at the top to name what another file declares.
- Write as you speak: \`layer clear, 3 coats\`, \`wait over night\`, \`step sand P120/150\` are read, and the formatter turns them into the plain form.
- What is wrong or missing is said on its line, with the right line. \`# allow RULE: reason\` on the line above silences one finding.
`;

export const READING = `## How the text is read

- One fact per line: every line begins with a keyword and ends at its end. A line that ends in a comma continues on the next, also when a comment follows the comma. But a next line that starts with a word of the block, or with \`}\`, starts a new fact, and the comma is the error.
- In the plain form \`{\` ends its line and \`}\` stands alone on one.
- \`#\` starts a comment. \`##\` lines directly above a declaration document it: Markdown, shown on hover and on the sheet. Paragraphs, lists with dots or numbers, headings, emphasis, code and fenced code are laid out; a link shows its text and its \`https\` address. A picture, \`![Before](photos/before.jpg)\`, stands in the HTML sheet; elsewhere, as on hover, its words and its name do.
- A picture is a PNG or a JPEG by its first bytes, of at most 4 MB and 64 million points, and lies where \`use\` may read recipes, links followed. What a camera or a program left in it (place, time, names, comments) is not copied. A file of sheets takes 24 of them and 24 MB. One that cannot be taken is named with the reason.
- Names are a letter and then letters, digits and \`_\`, in any script. Titles stand in double quotes, with \`\\"\` and \`\\\\\`.
- Nothing is reserved but \`x\`, \`to\`, \`with\`, \`by\`, \`of\`. A field or verb word is one only at the start of its line, a unit only after a number, family words only where a family is wanted; everywhere else a word is a name.
- Numbers: \`12\`, \`2.5\`, \`3/4\`, \`1 1/2\`. A quantity is a number and a unit, with or without a space, compound with the largest unit first: \`5 ft 6 in\`. Ranges: \`2 h to 24 h\`.
- Many lines may be written as people say them; the formatter turns each into the one plain form, see [As it is said](#as-it-is-said).
- Dates \`2027-03-08\`, times \`09:00\`, weekdays \`Mon\` to \`Sun\`. Money is a plain number with up to two decimals, in the currency of the shop.
- A file may say in which notation it is written: \`use notation 0.2\` on its first line. A newer one than is read here is an error, with what to do; the formatter leaves the line as it is.
- A half-typed file still gives outline, hover, completion and every finding of its sound parts.

## Names

Declarations stand at the top level in any order.
Names are unique over a file and all that it uses; materials, pieces, shops, recipes and jobs have a namespace each.
\`use\` passes on what the used file uses, up to a thousand files.
It reads plain files whose name ends in \`.finish\`, of at most 4 MB, and no device, pipe or name of another computer (\`//host/…\`); a link counts by where it leads.
In an editor it reads what lies in the open folders, and for a document that is open by itself what lies in its own folder or below; on the command line, what lies in a folder that was given or in the project of a file that was given: the folder of the nearest \`finishwright.config.json\`, else of the nearest \`.git\`, else the file's own.
Only you can add folders: in an editor by the setting \`finishwright.use.readAlso\`, which no workspace can make and which counts where you trust the workspace; on the command line by \`--read-also FOLDER\`.
What is not read is \`use-not-found\` on the \`use\` line, with the reason. A text of more than 4 MB that is open in an editor is \`not-checked\`.
One generic material of every family is built in and always in scope, named by the family's words joined with \`_\` (\`waterborne_polyurethane\`), and so is \`soap\`; only these may be shadowed.
Parameters hide materials.
Arguments are always named; \`()\` may be left out when empty; a \`recipe\` parameter is called by \`follow P(…)\`; a parameter may stand wherever its quantity may.
Recipes may follow one another a hundred deep, and one surface takes 5000 steps, layers and waits, at most 500 of them from the same line; anything beyond that is ignored, and the job reports it.
`;

export const LAYOUT = `## Layout

\`finishwright format\` and the formatter of the editor bring a file to one layout. It has no options:

- A block is indented by two blanks. A comment on a line of its own stands where a line of its block would.
- The values of a block start in one column, one blank behind the longest first word of its lines. The column holds for the whole block, over blank lines too; a block inside it has its own. Lines at the top level have none.
- A line that goes on behind a comma keeps its breaks, and goes on two columns further in than its value.
- Comments at line ends share a column, two blanks behind the longest line that has one, over lines of one block without a blank line between them.
- Between words stands one blank: none before a comma, none inside parentheses or before those of a call, none in \`table.top\` and \`10:1\`, one behind \`clear:\`, one on both sides of \`=\` and before \`{\`.
- A number has one blank before its unit, and a unit takes its plain form: \`19mm\` becomes \`19 mm\`, \`18°C\` becomes \`18 C\`, \`sq. ft.\` becomes \`ft2\`.
- Of blank lines in a row one is kept, and none at the ends of a block or of the file; none is put in. Blanks at line ends go, line ends stay what they are, and the last line has one.

Names, titles, the text of comments and the order of lines are never touched. What is written [as it is said](#as-it-is-said) takes its plain form, and means the same.
A line with a syntax error is left exactly as it is, and so is a whole declaration whose braces do not match; everything else is formatted around them.

\`\`\`finish
recipe painted_base(primer: material,
         paint: material) {
  for    wood
  safety dust_mask, gloves,  # goes on in the next line
           ventilate

  step   sand 120, 150    # the old paint is off already
  step   dust
  layer  primer, by foam  # one coat
  wait   until recoat
  layer  paint x 2, by foam {
    wait until recoat
    step sand 220  # by hand
    step dust
  }
  wait   until cured
}
\`\`\`
`;

export const SPOKEN = `## As it is said

Read on the left, formatted to the right. None of these adds a meaning.

| written | plain form |
| --- | --- |
| \`layer clear x 2 coats\`, \`layer clear, 2 coats\`, \`layer 2 x clear\` | \`layer clear x 2\` |
| \`layer clear x 2-3\`, \`x 2 or 3 coats\` | \`layer clear x 2 to 3\` |
| \`touch 30-60 min\`, \`air 18 to 20 C, 50-65 % RH\` | \`touch 30 min to 60 min\`, \`air 18 C to 20 C, 50 % to 65 % RH\` |
| \`recoat min 1 h\`, \`limits 15 C and up\`, \`wait at least 3 h\` | \`recoat 1 h\`, \`limits 15 C\`, \`wait 3 h\` |
| \`shape panel 600 x 720 x 18 mm\`, \`48" x 24"\` | \`shape panel 600 mm x 720 mm x 18 mm\`, \`48 in x 24 in\` |
| \`thin 5-10 % water\`, \`thin water, 10 %\` | \`thin water, 5 % to 10 %\`, \`thin water, up to 10 %\` |
| \`step sand P80, P120\`, \`120/150/180\`, \`180-220\`, \`with 320 grit\` | \`step sand 80, 120\`, \`120, 150, 180\`, \`180, 220\`, \`320\` |
| \`step sand lightly 320\`, \`step sand 320 if needed\` | \`step sand 320 "lightly"\`, \`step sand 320 "if needed"\` |
| \`step vacuum\`, \`step rub down 320\`, \`step wash with soap\` | \`step dust "vacuum"\`, \`step scuff 320\`, \`step clean with soap\` |
| \`wait over night\`, \`wait until touch dry\` | \`wait overnight\`, \`wait until touch\` |
| \`layer clear x 3, sand 400 between coats\`, \`4 h between coats\` | \`layer clear x 3, between sand 400\`, \`between wait 4 h\` |
| \`layer clear, mist coat\`, \`layer clear, 30 g/m2\` | \`layer clear, mist\`, \`layer clear, wet 30 g/m2\` |
| \`sold 1 L for 9.00\`, \`new 60.00\`, \`use_by food\` | \`packs 1 L for 9.00\`, \`new_price 60.00\`, \`meant_for food\` |
| \`layer stain, wiped\`, \`wiped after 15 min\` | \`layer stain, wiped off\`, \`wiped off after 15 min\` |
| \`existing shellac, worn\`, \`existing black paint, chipping\` | \`existing shellac "worn"\`, \`existing unknown paint "black, chipping"\` |
| \`wood oak, end grain\`, \`wood mahogany, Cuban veneer\` | \`wood oak "end grain"\`, \`wood mahogany "Cuban", veneer\` |
| \`press 60 min\`, \`loadable 24 h\`, \`hardener 2:1 by weight\` | \`recoat 60 min\`, \`cure 24 h\`, \`mix 2:1 by weight\` |
| \`mix 50 g to 0.5 L water\`, \`norm "EN 71-3"\` | \`mix "50 g to 0.5 L water"\`, \`note "norm EN 71-3"\` |
| \`recoat 4 h to 6 h, or after 24 h\`, \`recoat up to 1 h, or after 48 h\` | \`recoat 4 h to 6 h "or after 24 h"\`, \`recoat 48 h "or within 1 h"\` |
| \`extraction yes\`, \`outdoors yes\`, \`loss 10 %\` (of a job) | \`note "extraction yes"\`, \`outdoors rain, sun\`, \`spare 10 %\` |
| \`step fill "dents" with filler\`, \`step rinse twice\`, \`step clamp 60 min\` | \`step fill with filler "dents"\`, \`step clean "rinse" x 2\`, \`step "clamp", leave 60 min\` |
| \`layer clear, by hvlp 1.8 tip\`, \`by foam roller and brush\` | \`layer clear, by hvlp, "1.8 tip"\`, \`by roller and brush, "foam roller"\` |
| \`layer clear x 2, wet on wet 20 min\`, \`loss 33 %\`, \`on 5 of 18\` | \`layer clear x 2, wet_on_wet 20 min\`, \`transfer 67 %\`, \`only 5 of 18\` |
| \`thinned 20 %\`, \`layer clear "a test patch"\` | \`thinned 5:1\`, \`layer clear, "a test patch"\` |
| \`thinned 10 % with water\`, \`thinned 50/50 with water\` | \`thinned 10:1 with water\`, \`thinned 50:50 with water\` |
| \`mix hardener 10:1\`, \`mix 4 parts to 1 part hardener\`, \`mix 1 % hardener\` | \`mix 10:1 with hardener\`, \`mix 4:1 with hardener\`, \`mix 100:1 with hardener\` |
| \`start 14.11.2026 8am\`, \`ready Thursday 10 Dec 2026\` | \`start 2026-11-14 08:00\`, \`ready 2026-12-10\` |
| \`hours Mon-Fri 8-12, 13-17\` | \`hours Mon to Fri 08:00 to 12:00, Mon to Fri 13:00 to 17:00\` |
| \`bought $11.50\`, \`packs 1 L for 89,90\`, \`packs 5 kg for 32 EUR/kg\` | \`bought 11.50\`, \`packs 1 L for 89.90\`, \`packs 5 kg for 160\` |
| \`sheen 25 %\` (gloss units at 60 degrees) | \`sheen 25\` |
| \`family white spirit\`, \`existing french polish\`, \`meant_for everybody\` | \`family mineral spirits\`, \`existing waxed shellac\`, \`meant_for children\` |
| \`safety gloves and goggles\`, \`apply oiled to everything\` | \`safety gloves, eye_protection\`, \`apply oiled to all\` |
| \`2 x clear\`, \`2 coats of clear\`, \`mist coat of clear\` (without \`layer\`) | \`layer clear x 2\`, \`layer clear, mist\` |
| \`layer polish x 6-8 sessions\` | \`layer polish x 6 to 8 sessions\` |
| \`layer clear, only if necessary\`, \`layer clear, only where worn\` | \`layer clear, if needed\`, \`layer clear, only "where worn"\` |
| \`layer lacquer, 2 passes, flash-off 10 min between passes\` | \`layer lacquer, passes 2, flash 10 min\` |
| \`layer clear, by a roller and brush\`, \`layer clear, 5 % water\` | \`layer clear, by roller and brush\`, \`layer clear, thinned 20:1 with water\` |
| \`step turn over\`, \`step lift loose veneer\`, \`step mask glass\` | \`step turn\`, \`step "lift loose veneer"\`, \`step mask "glass"\` |
| \`step fill grain with filler\`, \`step clean with soap and wire wool\` | \`step fill with filler "grain"\`, \`step clean with soap "with wire wool"\` |
| \`wait 16 h until stackable\`, \`wait 4 h or overnight\` | \`wait 16 h "until stackable"\`, \`wait 4 h "or overnight"\` |
| \`recoat 4 h or after 24 h sand\` | \`recoat 4 h to 24 h\` |
| \`colour dark brown\`, \`cut 2 lb\`, \`batch 12345\` | \`colour "dark brown"\`, \`cut 2 lb/gal\`, \`batch "12345"\` |
| \`layer wax, buff off after 20 min\`, \`layer clear, by mop\` | \`layer wax, buffed after 20 min\`, \`layer clear, by brush, "mop"\` |
| \`step sand 120, 150, 40 min each\`, \`step strip with gel, 45 min under film\` | \`step sand 120, 150, takes 40 min\`, \`step strip with gel, leave 45 min, "under film"\` |
| \`step spot "knots" with sealer\`, \`step rub with bronze wool\` | \`step "spot knots" with sealer\`, \`step scuff "bronze wool"\` |
| \`sheen matt 10\`, \`shape 0.9 m2\`, \`existing soap\` | \`sheen 10\`, \`shape area 0.9 m2\`, \`existing soap finish\` |
| \`safety butyl gloves, suit\`, \`lead untested\` | \`safety gloves "butyl", "suit"\`, \`lead not_tested\` |
| \`recoat overnight\`, \`thin 1 part to 20 parts of water\` | \`recoat 12 h "overnight"\`, \`thin water, 1:20\` |
| \`mix hardener 10:1 by weight\` | \`mix 10:1 by weight with hardener\` |
| \`price 68.00 per piece\`, \`fan 10 min before\`, \`damage "two rings"\` (what no line is for) | \`note "price 68.00 per piece"\`, \`note "fan 10 min before"\`, \`note "damage two rings"\` |
| \`pot_life 4 h at 20 C\`, \`built about 1840\`, \`wood oak, veneer on pine\` | \`pot_life 4 h "at 20 C"\`, \`built 1840 "about"\`, \`wood oak, veneer "on pine"\` |
| \`area 0.9 m2\`, beside a shape \`area about 15 ft2\` | \`shape area 0.9 m2\`, \`note "area about 15 ft2"\` |
| \`spread 100 g/m2\`, \`film 130 um wet\`, \`limits 15 C to none\`, \`on_hand 2 x 2.5 L\` | \`covers 100 g/m2\`, \`covers 130 mL/m2\`, \`limits 15 C\`, \`on_hand 5 L\` |
| \`start Monday\`, \`ready before June, if possible\` | \`start "Monday"\`, \`ready "before June, if possible"\` |
| \`wait until next morning\`, \`wait until moisture below 12 %\` | \`wait overnight "until next morning"\`, \`step inspect "until moisture below 12 %"\` |
| \`step plane 0.5 mm a side\`, \`step scrape glue spots\`, \`step sand 240 on soft pad\` | \`step "plane 0.5 mm a side"\`, \`step scrape "glue spots"\`, \`step sand 240 "on soft pad"\` |
| \`layer clear, lid by foam roller\`, \`layer stain on bare places\` | \`layer clear, "lid by foam roller"\`, \`layer stain, only "bare places"\` |
| \`layer clear x 2 on knots\`, \`layer clear, excess wiped off after 15 min\` | \`layer clear x 2, only "knots"\`, \`layer clear, wiped off after 15 min, "excess wiped off after 15 min"\` |
| \`sand 220\`, \`then dust\`, \`let dry 2 h\`, \`step stain with walnut\` | \`step sand 220\`, \`step dust\`, \`wait 2 h\`, \`layer walnut\` |
| \`step strip "heat gun and scraper"\`, \`step light sanding 220\` | \`step scrape "heat gun and scraper"\`, \`step sand 220 "lightly"\` |
| \`wait up to 24 h\`, \`wait half an hour\`, \`recoat after 2 h\` | \`wait 24 h "up to"\`, \`wait 1/2 hour\`, \`recoat 2 h "after"\` |
| \`shape 4 legs 50 mm x 700 mm\`, \`shape frame 160 x 110 cm, 6 cm wide\` | \`shape 4 of post 50 mm x 700 mm "legs"\`, \`shape frame 160 cm x 110 cm x 6 cm\` |
| \`existing wax over shellac\`, \`existing 3 coats of paint\` | \`existing shellac, paste wax\`, \`existing unknown paint, 3 coats\` |
| \`mix 80 g/L warm water\`, \`packs 1 L 28.00\`, \`ready not before 2026-11-13\` | \`mix "80 g/L warm water"\`, \`packs 1 L for 28.00\`, \`ready "not before 2026-11-13"\` |
| \`safety P2_mask while sanding, no_food\` | \`safety dust_mask "while sanding", "no food"\` |
| \`hours Tue and Thu 15:30 to 17:30\`, \`room 60 m3, no fan\`, \`covers 35 ft2/pt\` | \`hours Tue 15:30 to 17:30, Thu 15:30 to 17:30\`, \`room 60 m3 "no fan"\`, \`covers 35 ft2/pt\` |
| \`mix pine tar 50 %, linseed oil 50 %\`, \`colour barn red\` | \`mix "pine tar 50 %, linseed oil 50 %"\`, \`colour "barn red"\` |
| \`existing oil varnish, 1962, sticky\`, \`existing alkyd paint 2 coats\` | \`existing oil varnish "1962, sticky"\`, \`existing alkyd paint, 2 coats\` |
| \`lead found 0.8 % by laboratory 2026-11-03\`, \`wear outdoors\` | \`lead found by laboratory 2026-11-03 "0.8 %"\`, \`outdoors rain, sun\` |
| \`step clean with oxalic acid 5 %\`, \`step rub with alcohol\`, \`step water_pop\` | \`step clean with wood_bleach "oxalic acid 5 %"\`, \`step clean with alcohol "rub"\`, \`step dampen "water pop"\` |
| \`layer glaze into corners\`, \`layer clear with grip_powder\` | \`layer glaze, "into corners"\`, \`layer clear, "with grip_powder"\` |

Several lines may be written on one: a block between its braces, lines with \`;\` between them, and in a block on one line also with commas or wide gaps before the next of its words; \`sand 180, then dust\`; \`piece table, stool x 2\`; \`apply stained, waxed to top\`; \`air 60 F, overnight 48 F\`. The formatter gives each a line of its own. So \`material oak_stain { family water stain; recoat 2 h }\` is a whole material.

A material of no family, or of one that is not known here (\`family cane\`), is a warning, \`material-not-known\`: nothing of it is checked. A surface without a \`wood\` counts as the worst that it may be, and one whose shape is not known, \`shape ring 41 cm\`, has no area. One more figure than a line has, \`labour 45.00 per h, helper 22.00 per h\`, does not count, which a warning says; so do stock and packs in containers of unknown size, and a room without a volume.
A word that may be several things is asked about by a warning, \`may-be-several\`, which writes out the right line for each. Until then what is a danger with one of them counts: \`family danish oil\` has the duties, rags, vapour, fire and cure of a drying oil and of a wiping varnish, is planned as the first of them, and rules on how layers go together are silent about it. So is an oil, wax, paint, primer, varnish, lacquer, stain, filler, glue, cleaner or thinner of any other name (\`family worktop oil\`), and a word for wear, users, weather, rags, ignition or an old finish counts as the graver one. A wood that is not known is an unknown wood, and a duty that is none is not in force.
A line kept as a note is told once a block, by a hint (\`kept-as-note\`); the formatter puts it in quotes. A line that may be a fact by another name, such as \`price 4.20\`, is a warning (\`not-counted\`), and stays as it is.
What no line is for is kept in words: a line as a note, and what is said behind a value or a comma in quotes. Nothing is worked out from it; it stands on the sheet, and rules on dangers read it. A word that is near to one of the notation, a date in figures, and a label's figure by another name are asked about instead, since they may be a slip.
A day that only its writer can place, \`ready "end of May"\`, is printed, and no date is worked out from it. A pack without a price, \`packs 1 qt\`, costs what is not known.
\`wait until next morning\` and \`until Sat\` are a night at least. Of a decade, \`built 1880s\`, the first year counts.
Lines between \`if runs show {\` and \`}\` are done in that case: a layer is one with \`if needed\`, steps and waits are counted.
Of a range the end counts that is worse for the work: the longest touch and cure, the shortest pot life, the lowest coverage, solids, flash point and air of the shop, the highest VOC, thinning and humidity, the warm and dry end of the air that a label's times are for.
A \`wait\` of a range counts as its shorter end. Of \`x 2 to 3\` the higher number is planned and bought for, and counts for thick films, fumes and air; the lower one counts where a surface may have too few coats, and a plan names the dates with either.
\`recoat 2-3 h\` is asked about, since it may be the earliest time or a window; \`recoat 2-24 h\` can only be a window.
So is what else could mean two things: \`thinned 50 %\`, \`3/4/2027\`, \`1.480\`, ounces of a liquid without a density. Each has a fix for each of its meanings.
A sign of a currency is read and left out: prices are in the currency of the shop.
Amounts by weight need no \`density\`; without one, what needs litres is not computed. A \`mix … by weight\` needs that of both parts.
A \`session\` of French polishing is many thin passes: litres are counted as for a coat, its film is not known.
A layer with \`if needed\` or \`only\` is planned and bought for, and counts for nothing where wear or film must be enough.
\`passes\` lie wet on wet in one coat, whose litres and film stay those of one; \`flash\` between them adds its time.
\`thinned 5:1\` without \`with\` takes what the material's own \`thin\` names. \`x coats - 1\` leaves one coat for a line of its own.
\`covers 10 ft2/can\` counts by the one pack that the material states. A night on a label is 12 h.
Words in quotes among the duties of \`safety\`, or behind one, say what else is worn, \`gloves "butyl", "suit"\`; none of them stands for a duty.
Words in quotes behind a comma, \`layer clear, "no draught"\`, say anything else; they stand on the sheet, and rules on dangers read them as they read notes.
\`only 5 of 18\` counts that share of all pieces.
\`apply R\` without \`to\` means the only surface of the job.
Between the coats of \`x 3\` without a block lies \`wait until recoat\`; \`between\` adds what else is done, and takes the place of that wait where it says how long. Sanding between coats is dusted off.
A \`mist\` counts for no coat where wear is hard; \`flooded\` takes twice a coat; \`thin\` is printed and changes no sum. \`full\` is a whole coat, whatever lays it.
`;

export const RECIPES = `## What steps do

A recipe is run, step by step, on every surface that a job applies it to.
The surface is a stack of layers, each with its dryness, and what lies on it: wax, grease, dust, water, raised grain.
Rules look at that, so every finding can point at the line that suffers and at the line that caused it.

- \`clean\` takes grease, dust and loose dirt, not wax. \`dewax\` takes wax.
- \`strip\` and \`scrape\` take every film and wax, and leave the surface to be cleaned.
- Words in quotes behind a step say how it is done: \`scrape "heat gun at 300 C"\`, \`sand 80, 120 "orbital sander, HEPA vacuum"\`. Rules on flames, heat, machines and lead read them, as they read notes.
- \`sand\` whose coarsest grit is 100 or coarser takes every old film, but not wax, which it only drives in; finer, and \`scuff\`, only abrade. A grit G takes 10/G mm of wood.
- Sanding leaves dust, which \`dust\` or \`clean\` takes.
- \`dampen\`, \`clean\` and waterborne layers raise the grain of bare wood.
- Water from \`dampen\`, \`clean\` or \`bleach\` leaves bare wood wet for 2 h; a dry sanding shows that it has dried.
- A layer's block is done between its coats, so once less than there are coats.
- Duties stated by \`safety\` hold from their line to the end of the block; they reach into \`follow\` and never out of it.

## Waits

\`wait 72 h\` is that time; \`wait overnight\` is to the next morning at which the shop is open: to its opening, or to 12 h after what went before where that is later. \`wait 9 h\` that ends while the shop is closed lasts until it opens as well, since nobody works before; \`wait until touch\`, \`recoat\` or \`cured\` counts from the end of the last layer or filling on that surface, and has no effect without one.
An opening is the moment at which the shop opens, having been closed just before: where work goes on from 07:00 to 22:00, a night that begins at 20:00 lasts to the morning after next, because at 07:00 only 11 h have passed.
While the shop is open day and night, 24 h or more on end, there is no opening to wait for, and a night is 12 h; without a shop it is 16 h.
Stated hands-on time counts as drying time; the tool's own estimates do not, because they do not show that a film is dry.

## Jobs

\`apply R to top, base\` and \`to all\` may be said; a surface applied to again goes on where it was left.
With two or more \`piece\` lines a surface of a name that several have is \`piece.surface\`; the name of a piece alone, \`apply R to stool\`, means all its surfaces.
\`after JOB\` starts from what that job left: its layers, its \`on_hand\`, and nothing more to pay for the piece. \`existing as left by JOB\` takes only the layers.
\`start\` without a time is that day's opening. Times are the shop's local time.
A job has no dates where its outcome is void, which a finding says: a coat that does not dry in the shop's air or does not hold on what lies below, old paint that nobody has tested for lead. It stays so until the finding is settled or a comment answers for it. Where the project has switched the rule off in its settings, the job has dates, and what the rule says stands with them.

In a shop equal steps and coats are done in one go wherever that is best. \`together\` on a line asks for it: all pieces of a surface by one person with one setting up; where no opening or no pot life holds them, there is no plan, and \`no-schedule\` says so. \`apart\` forbids it: each piece by itself.

Jobs with a \`start\` that name the same shop, the same declaration that each reaches by \`use\`, have one plan wherever its people are needed for several of them at once.
They share its hours, its \`crew\` and its air; each begins no earlier than its \`start\`, and after the jobs that it names with \`after\` or \`as left by\`.
Best is what makes the fewest days late by \`ready\`, then the earliest last work, then the least sum of the jobs' last works. Equal steps of several jobs may be done in one go.
More than 60 such jobs are planned one after the other in the order of \`ready\`, each fixed before the next; more than 300 are not: those due last are planned alone, and named.
All jobs in the files that are looked at take part: on the command line the files or the folder that you name and all that they use, in an editor the open files and all that they use. \`schedule --job NAME\` looks at one job alone, and says what the others would do to it; \`compare\` looks at both jobs alone.
`;

export const RECORD = `## The record

\`done\` lines in a job say what was really done. They are the record of the job, in any order, one a line:

\`\`\`text
  done  2027-03-08 10:10 dust on top, took 70 min
  done  2027-03-08 11:00 coat of walnut_gel on top, used 150 mL, paid 9.80
  done  2027-03-10 14:00 coat 2 of hall_clear on top and base, took 25 min, air 17 C, 60 % RH, by "M."
  done  2027-03-11 09:30 coat 3 of hall_clear on top, piece 2, trouble runs, photo "top-2.jpg"
\`\`\`

The time is when the work ended; without one it is the end of that day, so that no wait is cut short.
What was done is a coat, a verb as in the recipe, or the words of a step in quotes. It is the next of its kind on the surface, and all before it counts as done, too: sanding and dusting need no line of their own. \`took\` is the hands-on time of all that a line stands for.
A coat of a material that the recipe does not have any more is the next coat out of another can; a coat after the last one, or of the material put on last, is a coat more. Both count for film, drying, stock and cost as they are, and the rules judge them.
\`on\` takes surfaces as \`to\` does, several with \`and\`; \`piece 2\` is one of several pieces. \`took\` and \`used\` of several surfaces are shared by their areas.

The plan goes on from the last record, and never from the clock of the machine; on the command line \`--today 2027-03-12\`, and in an editor the setting \`finishwright.plan.today\`, says a later day, also for jobs that have not begun. Waits count from the end of what was done, in the \`air\` of its line where that is stated. The cure goes on in the air of the shop, and counts no shorter than in the measured one.
\`finishwright record FILE --ticks -\` writes the lines for what was ticked on an HTML sheet and copied from it; in an editor *Record as done now* writes that of the next step.
The cans of the plan count as bought once their material is in use; \`paid\` takes the place of their price.
A job whose lines have no \`start\` began with its record. A job \`after\` it starts from what was really done.
\`trouble\` names what went wrong, and \`record-trouble\` says what of its causes is seen in this very recipe. \`finishwright repair FILE\`, or the quick fix on its line, writes a recipe that puts it right.
`;

export const WORKED_OUT = `## Lead

Whether an old coating may hold lead follows from \`lead\` of the surface, \`built\` of the piece and \`country\` of the shop.
\`lead found\` counts by any method. \`lead none_found\` counts only \`by laboratory\`, of a sample of every layer down to the wood, and only where its date is not after the first day of work.
Without such a result an old coating counts as lead paint where its age is not stated, where it was made before or in the year in which the country limited lead in paint, where that year is not known here, and where no country is stated.
Known years: ${LEAD_BANS.map(({ country, year, source }) => `${country} ${year} (${source})`).join("; ")}.
\`safety lead_test\` says that the coating will be tested. It is not a result, and it does not say how to work.
Even where no lead is found, do not breathe the dust: masks, cleaning up and keeping children out stay as they are.

## Amounts

Mix = area · pieces · coats · (1 / spreading rate · laydown, or \`wet\`) / transfer efficiency · (1 + spare).
A label's rate is for a brushed coat. How much of it is laid, and how much of what leaves the can lands on the piece, depends on the method:

| how it is put on | laydown | lands on the piece | source |
| --- | ---: | ---: | --- |
| by hand, unless a row below says otherwise | 1 | 1 | the label's spreading rate |
${HAND_ROWS}
| \`session\` of French polishing, all its passes together | 1 | 1 | ${PRACTICE} |
| by hand, \`wiped off\`: it has been put on first | 1 | 1 | ${PRACTICE} |
| \`by hvlp\` | 1 | ${TRANSFER_EFFICIENCY.hvlp} | South Coast AQMD, spray equipment transfer efficiency: 65 % |
| \`by airless\`, \`by spray\` | 1 | ${TRANSFER_EFFICIENCY.airless} | ${PRACTICE} |

A stated \`wet\` film is laid as it is. Setting up and cleaning a gun takes time, not litres: what stays in its cup and hose is part of \`spare\`.
All that leaves the can evaporates in the room: what is laid, overspray, and what is wiped off, which evaporates from the rags as well unless you close them in (${MASS_BALANCE}). So the grams of a job and those that the air of its room carries away are of the same litres.
\`tinted P %\` takes P % of the mix; \`thinned a:b\` divides the rest.
Wet film is 1 / spreading rate · laydown (or \`wet\`), dry film that times the mix's solids by volume; efficiency and spare never enter the film, and wiped layers, stains, conditioners, oils, waxes and auxiliaries build none.
A step \`with M\` uses area · pieces / spreading rate · (1 + spare) where M itself states \`covers\`; \`fill\` uses only what \`, uses 50 mL\` says; \`soap\` and \`water\` are not listed.
Cans are the cheapest set that covers the need less \`on_hand\`; at equal cost the least left over, then the fewest.
What is not stated enough for is not computed, and hover says what is missing.

All formulas, with their sources and the tests that hold them: [computations](computations.md). Times that are not stated: [hands-on times](hands-on-times.md).

## Air

A label's times hold in its rated air; the shop's air lengthens \`touch\`, the earliest \`recoat\` and \`cure\`, and never shortens them. The latest end of a recoat window stays.
Where a label states no air of its own (\`rated\`), its times are told for ordinary room air, and 19 C or more with 55 % RH or less lengthens none of them.
Waterborne: e(rated)(1 − RH rated) / (e(shop)(1 − RH shop)), e(T) = 0.61094 · exp(17.625 T / (T + 243.04)) kPa.
Oils, oil and alkyd varnish and paint, oil and gel stain, hardwax oil, conversion varnish, epoxy: 2^((rated − shop)/10).
Lacquers, shellac, alcohol, wax: exp(4700 (1/T shop − 1/T rated)), T in kelvin.
Without a shop the factor is 1.
\`night_air\` is the air of the shop while it is closed, where that differs. Drying goes on evenly in both: hours open / time by day + hours closed / time by night. What dries within one night by the night's air alone takes the day's time, since it is dry before that night or in the morning; what does not takes the longest that it can, begun at any time while the shop is open. Better air by night shortens nothing, and pauses under 6 h are part of the day. Where the shop has no \`hours\`, the worse of both counts throughout. A layer whose label's limits the night's air is outside of is found.

## Thresholds

- \`grit-jump\`, by median grain: a hint above a ratio of 2, a warning above 2.5.
- \`grit-too-coarse\`: a warning where the last grit is coarser than 120 before a stain, 100 before a clear, 80 before paint, 50 before a primer, 80 between coats of paint or 120 between other coats; a hint up to 120 before a clear, 100 before paint, 80 before a primer, 100 between coats of paint and 180 between other coats. \`grit-too-fine\`: finer than 240 before a penetrating stain.
- \`sand-through\`: more than 0.8 of the veneer taken. \`near-dew-point\`: within 3 C.
- \`too-weak-for-wear\`: on hard wear fewer than 3 coats of a clear or an enamel (a primer below it counts as one, two wiped coats as one), or fewer than 2 of hardwax oil or a two-part clear. \`not-for-this-use\`: wax, oil or a primer alone there, and outdoors, where rain or sun reaches it, all but spar varnish, exterior oil, paint and two-part polyurethane. \`damp-timber\`: \`moisture\` above 20 %.
- \`filler-not-dry\`: less than the filler's recoat; where its label states none, its family's figure in the shop's air, a night of 12 h at least, but for what a hardener sets.
- \`conditioner-dried-out\`: a stain later than the end of the conditioner's recoat window, its family's 2 h, or a day where the label states no end. No air lengthens it, and there is no margin.
- \`recoat-too-early\` leaves a second coat of drying oil or oil stain alone within 1 h of the first, where it is wiped off.
- \`wood-still-wet\`: less than 2 h after water on bare wood, before what is not carried by water.
- Needed times are the label's (or the family's) times the factor of the shop's air. A shortfall of at most 5 %, and never more than 4 h, is a hint; beyond that the rule's level holds. \`waitMarginPercent\` in \`finishwright.config.json\` makes the 5 % smaller, never larger.
- Where the figure is the family's, an error is one only when more than 25 % of the time is missing; else it is a warning. The label decides.
- This margin is for times before the next work alone: never for cure before use, by children or with food, for rags, vapour, ignition, lead, mixing or pot life, nor for the latest end of a window.
- \`ventilation-too-weak\`: all that the job and other jobs in the same room give off within 8 h, within 15 min or at one moment needs more air than the room has or \`ventilate N\` states, with a mixing factor of 5 (a warning). A hint where \`ventilate\` states no amount and 10 air changes/h would do, where the stated respirator covers it (10 times the limit, supplied air 25 times), or where only the strictest solvent that stands for an unnamed one is over its limit.

## Levels and places

What each rule says, and how gravely: [the rules](rules/index.md).
A finding stands on the line that suffers, with its cause as a related place; one finding a rule, line and job, naming the surfaces.
What holds whatever the surface is shown once, on the recipe's line, even if no job applies it: the recipe is then run on an assumed surface of which nothing is known, and what depends on something unknown stays silent.
What comes from the piece, the shop or the arguments of one job stands on the recipe's line where that is in the same file, else on the job's \`apply\` line, and names the job.
A recipe that no job applies is checked with the surfaces of its file that it must be meant for, if no job works on their piece: those that its name names, else those of the piece that it names, else those that no other recipe fits by its \`for\`. No shop, date or stock is assumed.
\`recipe-not-for-surface\` stands on \`apply\`: \`wood\` takes species with or without veneer and sheet goods, \`veneer\` only veneered wood and plywood.
\`# allow RULE: reason\` on the line above silences one finding.
\`internal-error\` says that a part of the program failed: a rule that does costs its own findings only, and is named on the declaration that it was judging. It cannot be allowed or set to another level, since what was not checked must not look sound.
\`not-checked\` says the same of what is larger than what is worked out of one file: the bounds are counted in steps, coats and waits and not in time, so they are the same on every machine.
`;

/** What was decided where the notation leaves room. One sentence or two each. */
export const DECISIONS: readonly string[] = [
  "`rated` not said is the family's, 21 C and 50 % RH. A shop that states no humidity has the label's.",
  "Air above 99.9 % RH counts as 99.9 %, so that every factor is finite; temperatures are limited to −40 to 100 C.",
  "A hands-on time that is not stated is rounded up to five minutes; a stated one stands as it is.",
  "A family's spreading rate serves for layers only. A step uses litres where its material states a rate of its own, since nobody dewaxes by the label of a varnish.",
  "A coat that the recipe itself puts on after the window of the coat below is planned as the recipe says; `recoat-too-late` says that it is late.",
  "A window ends for good once the coat below has been abraded, and wax may go on at any time.",
  "Sanding to the wood takes old films, not the coats of the same recipe.",
  "Buffing with a wax leaves wax on the surface like a layer of it, but `until` does not count from it.",
  "A surface of which nothing is known counts as bare where it is dampened or bleached, because nobody dampens anything else.",
  "`follow`ed recipes are judged for duties where they are followed: what the caller states reaches into them.",
  "`existing as left by JOB` are layers of years ago, fully cured; after `after JOB` they are as old as the two starts say.",
  "A filler that states no recoat takes its family's figure, and a night of 12 h at least.",
  "A colour is light or dark only by its number (CIE lightness from 70, up to 40) or by a word that leaves no doubt; else it is neither, and rules on light and dark stay silent.",
  "A piece without `built` may be of any age: old coatings on it count as lead paint until a laboratory has found none.",
  "In the year in which a country limited lead in paint, and where no country is stated, lead is presumed.",
  "What thins a material may be written with blanks or as the name of the built-in material: `mineral spirits`, `mineral_spirits`.",
  "One solvent stands for each carrier: mineral spirits, ethanol for alcohol, toluene for lacquer thinner, acetone, and a glycol ether for what is not water in waterborne materials.",
  "The solvent of a coat is taken to leave evenly from the first stroke to half of the time to touch dry (common practice, no source).",
  "`ventilate` without a number brings no certain amount: sums go by the room's own air changes.",
  "Dated jobs of all files that name the same shop share its people, its hours and its air; where the plan can put a coat off for the air without making a job late, it does.",
  "Where nothing names the solvent of a coating, the strictest of its kind stands for it: 2-butoxyethanol for waterborne ones, methanol for alcohol. A `##` text such as `Solvent: dipropylene glycol methyl ether.` names it.",
  "A schedule is called exact only where no plan is proven to finish earlier; else its lower bound is printed beside it.",
  "Printed lengths, litres, hours and grams have six decimals at most, money two.",
];
