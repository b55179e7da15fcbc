// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.

/** A sentence on each rule, by its id. */
export const RULE_SUMMARIES: Readonly<Record<string, string>> = {
  "air-outside-limits": "The shop's air is colder, warmer or damper than the material's label allows.",
  "ambering-over-white": "A clear that yellows goes over white or light paint.",
  "applicator-against-carrier":
    "A lacquer goes on by foam, which it dissolves, or a waterborne coat with natural bristle, which swells.",
  "asbestos-named":
    "The words of a recipe or of a material it uses name asbestos as something that is there.",
  "bad-number": "A number is zero, negative, not whole or out of range where that means nothing.",
  "banned-stripper":
    "A recipe uses a material whose words name methylene chloride (dichloromethane, DCM, CAS 75-09-2), or its own words say to use it.",
  "bleach-not-neutralised": "A coat goes on bleached wood that was not rinsed or neutralised.",
  "bleach-over-finish": "Wood is to be bleached while a finish is still on it.",
  "blotchy-stain":
    "A stain goes on blotch-prone wood without conditioner or sealer below it (a hint for gel stain).",
  "burnished-wood":
    "Bare wood is sanded finer than 400, or buffed, right before a varnish, a waterborne clear, hardwax oil or conditioner.",
  "caught-in-machine":
    "A note or a step has gloves, loose sleeves or a wrapped cloth at a machine that turns, or its guard taken off.",
  "caustic-on-aluminium":
    "Lye (caustic soda, sodium or potassium hydroxide) goes on a surface whose words name aluminium, or a note puts the two together.",
  "caustic-or-acid-left-in":
    "Wood that was washed with lye or a strong acid, or bleached with one, is sanded or coated and was not rinsed since. Coated after a rinse with water alone, it is a hint to neutralise it.",
  "caustic-stripper-on-veneer-or-oak":
    "A stripper or cleaner whose words name lye (caustic soda, sodium or potassium hydroxide) goes on veneer or on wood rich in tannin.",
  "child-or-food-surface":
    "A children's or food surface is left before its last coat has its full cure, or has a material on it that is not meant for it: by its label's words, or a stain, dye or filler that no film keeps from food.",
  "coat-block-never-done": "A layer of one coat has a block of steps between coats.",
  "coat-on-unclean-surface":
    "A coat goes on a used surface that was never cleaned, on what a stripper left, or on sanding dust.",
  "coat-on-unscuffed-surface":
    "A film goes on an old or slick film, on laminate or on metal that was not abraded.",
  "coat-over-wax": "Anything but wax goes over wax that was not removed.",
  "colour-sanded-through":
    "A stain or glaze, or the one thin coat over it, is sanded with a grit coarser than 180; as a warning, a filler in it is sanded flush with one coarser than 220.",
  "colour-shows-through":
    "A single coat of light paint goes over dark wood or a dark colour, without a primer.",
  "conditioner-dried-out": "A stain goes on a conditioner that has dried, past the latest time for it.",
  "covered-before-cure": "A line tells to stack, wrap or blanket the piece before its last coat has cured.",
  "damp-timber":
    "A surface, a note or a step says that the wood holds more than 20 % moisture, and it is finished all the same.",
  "distressed-left-bare": "A finish is distressed to the wood, and nothing goes over the bare places.",
  "duplicate-name": "A name is declared twice in its kind, over the file and all that it uses.",
  "eating-at-work":
    "A note or a step has people eat or drink where they finish, or put a brush, a finger, a hose or a gun to the mouth.",
  "empty-recipe": "A job applies a recipe that has no lines.",
  "filler-not-dry":
    "A filling is sanded or coated before the filler's recoat time, or by its family's figure if it states none, a night at least.",
  "filler-takes-no-stain": "A stain goes over fillings of a filler that does not take stain.",
  "film-too-thick": "The new coats of one family together are thicker than a sound film of that family.",
  "film-too-thin": "The last film is thinner than a single sound coat of its family.",
  "flames-not-kept-away":
    "A liquid whose vapour can be lit is put on, wiped with or thinned with, and the recipe does not state `no_ignition`.",
  "flammables-stored":
    "The cans of a job, those on hand and those to buy, hold more flammable liquid than a room may have outside a storage cabinet (a warning), or than one cabinet may hold (a hint).",
  "flash-rust":
    "Bare steel or iron gets a waterborne coat without a rust-inhibiting primer, or is washed or sanded wet and not wiped dry at once.",
  "follow-cycle": "A recipe follows itself, directly or over others, or a job comes after itself.",
  "fuel-as-solvent": "A recipe uses, or says to use, petrol (gasoline) to clean or to thin.",
  "glue-not-set": "A surface is sanded, scraped or coated before the glue of a joint in it has set.",
  "glue-over-finish": "Something is glued after the surface was oiled, waxed or coated.",
  "grain-not-knocked-down":
    "A waterborne material goes on bare wood, and nothing is sanded after the grain rose.",
  "grit-jump":
    "From one grit to the next the particles become more than 2 times (hint) or 3 times (warning) smaller.",
  "grit-too-coarse":
    "The last grit leaves scratches that show: coarser than 120 before a stain or clear, than 80 before a primer, than 100 before paint and between coats of paint, or than 180 between other coats.",
  "grit-too-fine":
    "The last grit is finer than 240 before a penetrating stain, or too fine for paint to hold (finer than 320 on bare wood, than 400 on a film).",
  "handled-before-dry":
    "A new coat is buffed, distressed or fitted with its parts before it is dry to the touch.",
  "hard-over-soft": "A brittle film goes over a soft or flexible one.",
  "haze-over-dark": "A dull clear goes untinted over a dark colour.",
  "heat-near-vapour":
    "A note puts the work near a stove, heater, radiator, boiler or pilot light, or the shop's own words name one while its `ignition` is not stated, and a flammable liquid or an oil with self-heating rags is used.",
  "hours-not-stated": "A job with a start is planned for the night, since its shop states no hours.",
  "ignition-near-flammable": "A flammable liquid is used in a shop that has a source of ignition.",
  "in-service-before-cure":
    "The date wanted comes before the full cure, or the recipe for a surface of hard wear ends before it. Where a film has had days to harden and nobody wears it hard, or where a note says how gently it is used until then, the date of the cure is information.",
  "incompatible-chemicals":
    "Chlorine bleach meets ammonia or acid, peroxide meets acid, or lye meets strong acid: in one vessel, or one after the other on the same surface. So does water that is poured onto lye or strong acid.",
  "internal-error":
    "A part of Finishwright failed, so something was not checked: a bug in the program, not in the recipe.",
  "irritating-wood-dust":
    "Bare rosewood, cocobolo, ebony, iroko, teak, wenge or yew is sanded dry, and the recipe does not state `gloves`.",
  "isocyanate-hardener":
    "A coating that names isocyanate, or a two-part coating that does not say it holds none, is sprayed without `supplied_air`.",
  "kept-as-note": "A line says something that the notation has no line for; it is kept as a note.",
  "kept-in-drink-bottle":
    "A note says to keep or pour something into a bottle or cup that people drink from, or into a container without a label, or within children's reach.",
  "knots-not-sealed":
    "Light solvent-borne paint goes on bare, knotty softwood without shellac or a primer that blocks.",
  late: "The job's earliest finish comes after the day it is wanted.",
  "layer-against-for": "A recipe for laminate or metal lays a conditioner or grain filler, or bleaches.",
  "layers-at-odds":
    "Two layers that do not go together: lacquer over oil, or over filler or glaze that has not cured, a glaze over bare stain, filler or conditioner over a film, anything but soap over a soap finish.",
  "lead-not-tested":
    "An old coating that may hold lead is sanded, scuffed, scraped, stripped or distressed, and nobody tests it first.",
  "lead-unsafe-method":
    "A coating that holds lead, or may hold it, is worked on by a heat gun above 1100 F (593 C) or of unstated heat, or until it smokes, by a machine or by blasting without a HEPA filter, by dry sanding or scraping, or with a volatile stripper without stated ventilation; or its dust is dusted dry, swept, blown or carried about. That dust by `lead_safe` is to be taken up wet is information. Above 450 C a heat gun draws a warning.",
  "mask-left-on":
    "A part is masked and never unmasked, or unmasked after the coats over the edge have fully cured; where that takes no more than two weeks, as long as good tape may stay on, or where all that is over the edge was wiped on thin, it is a hint.",
  "masked-before-dry": "Tape goes on a new coat before its recoat time.",
  "material-cannot-be-layer": "A `layer` line names a cleaner, a solvent, water, a stripper or a bleach.",
  "material-not-known": "Nothing says what kind of material this is, so nothing of it is checked.",
  "may-be-several":
    "A word of everyday speech may be several things of the notation, which differ at the bench.",
  "mdf-edge-unsealed": "Waterborne paint goes on bare MDF with its edges, without a primer or sealer.",
  "metal-without-degreasing": "Bare metal of a used piece is coated and was never cleaned.",
  "milk-paint-on-film": "Milk paint goes on a scuffed film without a primer.",
  "missing-argument": "A call leaves out an argument whose parameter has no default.",
  "missing-field":
    "A required field is missing: a material's `family`, a surface's `shape` and `wood`, a job's `piece` and `apply`.",
  "mix-not-as-labelled":
    "The `mix` of a material has another ratio than its title or its words, such as “ten parts to one part of hardener”.",
  "mixed-by-guess":
    "A note or a step has the hardener of a two-part material dosed by guess, or more or less of it than the label says.",
  "near-dew-point": "The shop's air is within 3 C of its dew point when a layer goes on.",
  "nmp-stripper":
    "A recipe uses a material whose words name NMP (N-methyl-2-pyrrolidone, CAS 872-50-4), or its own words say to use it.",
  "no-dust-mask":
    "Wood or a film is sanded, scuffed or distressed dry, and the recipe states neither `dust_mask` nor a respirator.",
  "no-eye-protection":
    "A material or a way of working can harm the eyes, and the recipe does not state `eye_protection`.",
  "no-gloves":
    "A material that harms or dries the skin, or a coating of two parts, is handled, and the recipe does not state `gloves`.",
  "no-hearing-protection":
    "A layer is sprayed with a loud pump, or a note or a step's words name a loud machine (sander, grinder, planer, saw, compressor, blasting), and the recipe does not state `hearing`.",
  "no-lead-safe-work":
    "Lead paint, or an old clear that comes off, with lead found or presumed, is abraded, or paint in which lead was found is stripped, and the recipe does not state `lead_safe`.",
  "no-respirator":
    "A strong solvent or spraying asks for a respirator, and the recipe states neither `vapour_respirator` nor `supplied_air`.",
  "no-schedule": "The waits, recoat windows and opening hours of a job cannot all be kept.",
  "no-ventilation":
    "A material or a way of putting it on gives off vapour, and the recipe does not state `ventilate`.",
  "not-checked": "A file, job or recipe is larger than what is worked out, and what lies beyond is left out.",
  "not-counted": "A line may be a fact by another name; it is kept as a note and does not count.",
  "not-enough-on-hand":
    "The job needs more of a material than is on hand, and the material does not say how it is sold.",
  "not-for-this-use":
    "A finish that is not made for its use: wax, oil, shellac or a primer last on hard wear, a finish for rooms in rain or sun, shellac last where alcohol or heat is expected.",
  "note-against-protection":
    "A note or the words of a step tell people to do without gloves, goggles, a mask, a respirator, ear protection or fresh air that the materials or the work of this recipe need, or with something that does not do its work.",
  "oil-over-film":
    "A drying oil, a hardwax oil or a soap finish goes over a film or laminate that it cannot soak into.",
  "old-finish-not-stated":
    "A piece of a time when paint held lead is worked on, or a surface is stripped, and no `existing` says what is on it.",
  "one-face-counted":
    "A door, or what a recipe turns over, is a `panel` whose line does not say how many faces are meant.",
  "open-flame":
    "A note, or the words of a step, call for an open flame: old paint is burned off, somebody smokes, a candle or a lighter is lit, or oil, wax, spirits or varnish are warmed over a flame or on a stove. Charring bare wood on purpose is a warning.",
  "over-budget": "The job's total cost is above its budget.",
  "paint-heated-to-smoke": "A note or a step has paint or varnish heated until it smokes, browns or chars.",
  "paint-only-substrate": "A stain goes on bare MDF or particleboard, which is made for paint.",
  "poisonous-ingredient":
    "A recipe uses, or says to use, white and red lead, arsenic, mercury, chromium(VI) (dichromates), cyanide, pentachlorophenol, creosote, DDT and their like, by any of their names.",
  "poisonous-solvent":
    "A recipe uses, or says to use, carbon tetrachloride, trichloroethylene, perchloroethylene, benzene (benzol), chloroform, carbon disulphide, 1-bromopropane or methanol (wood alcohol), by any of their names.",
  "pot-life-overrun": "Putting on one coat takes longer than the mixed two-part material can be used.",
  "poured-down-drain":
    "A note says to pour stripper, solvent, paint, lye or acid down a drain or onto the ground.",
  "rags-in-a-heap":
    "A note or a step tells to leave oily rags in a bin, a bag, a pocket or a heap, whatever `safety wet_rags` says.",
  "rags-not-wetted":
    "A material whose rags heat up by themselves is used, and the recipe does not state `wet_rags`.",
  "recipe-not-for-surface": "A job applies a recipe to a surface that it is not for.",
  "recipe-without-job": "No job applies a recipe, and it is not clear which piece of its file it is for.",
  "recoat-too-early":
    "A layer goes on before the recoat time of the layer below, in the shop's air. A hint where the label's own hours are kept, the label names no air, and the shop's asks for no more than a quarter longer.",
  "recoat-too-late":
    "A layer goes on after the recoat window of the layer below, and nothing was sanded since.",
  "record-air-outside-limits": "A coat was recorded in air that its label does not allow.",
  "record-coat-too-late":
    "By the record, a coat went on too late over one that was not sanded, or the next one now would.",
  "record-coat-too-soon": "By the record, a coat went on before the one below was ready.",
  "record-differs": "A coat was recorded that the recipe does not have, or of another material.",
  "record-not-in-recipe": "A `done` line tells of something that the job does not have.",
  "record-skips-coat": "A `done` line comes after a coat that no line tells of.",
  "record-trouble": "A `done` line names a trouble: its causes, those seen here first, and what to do.",
  "repeated-field":
    "A field or a tail that may stand once stands twice; or a piece or a used file is named twice.",
  "sand-through": "The sanding takes more than 0.8 of a veneer's thickness, or goes into a laminate.",
  "sanded-back-to-coarser": "A coarser grit follows a finer one on the same surface, with nothing between.",
  "sealer-missing":
    "A varnish, an oil paint or a waterborne film goes straight on bare wood that holds oil of its own.",
  "sheen-not-of-material": "A layer asks for a sheen, and its material states another.",
  "silicone-below": "A coat goes over the silicone that a polish left.",
  "size-not-stated": "A surface has no `shape`.",
  "sleeping-in-fumes":
    "A note, or the shop's own words, have somebody sleep, or have children, animals or others stay, in the room where a finish is put on or dries.",
  "slick-surface-without-primer":
    "Paint goes straight on laminate, melamine, foil or metal without scuffing and a primer (a hint where it was scuffed).",
  "solvent-lifts-layer": "A strong solvent goes over a layer that it dissolves or wrinkles.",
  "solvent-on-skin":
    "A note or the words of a step say to wash or wipe hands or skin with a solvent or bleach.",
  "sparks-and-dust":
    "A note or a step takes up vapour or spray mist with a dust collector or vacuum cleaner, sends sparks into one, burns dust in a stove, blows dust about near a flame, or blows it off indoors with compressed air; or, as an error, nitrocellulose lacquer is sanded dry in a shop with a flame, a heater or sparks.",
  "spraying-flammables-indoors":
    "A flammable liquid is sprayed, and the recipe does not state `no_ignition`.",
  "stain-left-on":
    "An oil or gel stain gets another coat over it, and nobody wipes off what does not soak in.",
  "stain-on-sealed-surface":
    "A penetrating stain goes on a film, on laminate or metal, or on a filler that does not take it.",
  "stain-over-end-grain":
    "A dark penetrating stain goes on a solid top with its edges, and the last grit before it is coarser than 150.",
  "starts-before-earlier-job": "A job `after` another begins before that one is finished.",
  "steel-wool-on-tannin-wood": "A text tells to use steel wool on bare wood that is rich in tannin.",
  "steel-wool-under-waterborne": "A text tells to use steel wool, and the next coat is waterborne.",
  "step-material-misfit":
    "A step names a material that cannot do it: cleaning with a finish, filling with a solvent.",
  "suppression-without-reason": "A comment `# allow RULE` gives no reason; it allows nothing.",
  syntax: "The text is not in the notation.",
  "tannin-bleed":
    "Light waterborne paint goes on wood that bleeds (tannin, knots, coloured extractives) without a stain-blocking primer or shellac; a hint for a wash, and for milk paint on raw softwood.",
  "test-contradicts-existing":
    "A spot test of a surface speaks against its `existing` finish, or the tests against each other.",
  "thinned-too-far":
    "A layer is thinned further than the material's label allows (or, a hint, than is usual for its family).",
  "toner-without-clear": "A toner gets wax or oil over it but no clear.",
  "too-weak-for-wear": "A surface of hard wear gets too few coats.",
  "unknown-field": "A line begins with a word that its block has no field for.",
  "unknown-name":
    "A name is used that neither this file nor one that it uses declares, and that is not built in.",
  "unknown-word":
    "A word of a closed vocabulary is expected (a family, wood, verb, shape, method, duty), and this is none.",
  "unprotected-layer": "A paint or stain that needs a clear or wax over it gets none.",
  "unused-name": "A parameter is not used in its recipe, or nothing here names anything from a used file.",
  "unused-suppression":
    "A comment `# allow RULE: reason` stands above a line on which that rule finds nothing, or names no rule.",
  "use-cycle": "A file uses itself, directly or over others.",
  "use-not-found": "A file named by `use` cannot be found, or may not be read.",
  "veneer-coarse-grit":
    "The first grit on a veneer under 1 mm is 60 or coarser and takes more than a third of it in one pass.",
  "ventilation-too-weak":
    "The coats and steps of a job, with those of other jobs in the same room, give off more vapour than the fresh air can keep under the exposure limits.",
  "wait-without-effect":
    "A `wait until …` stands before the first layer or filling of a job's surface, or waits for a time that no label states.",
  "waste-burned":
    "A note or a step tells to burn scrapings, painted or varnished wood, rags, tins or other waste of finishing.",
  "water-on-veneer": "Bare veneer on a piece from before about 1950 is dampened or cleaned with water.",
  "waterborne-over-uncured-oil": "A waterborne layer goes on before the oil or oil stain below has cured.",
  "wax-sanded-in": "A waxed surface is sanded to the wood first, and dewaxed only afterwards.",
  "waxed-shellac-below":
    "A polyurethane or a waterborne clear goes over waxed shellac or a stearated sealer.",
  "weather-on-coat": "A coat goes on in a shop outdoors, where rain or sun reaches it before it is dry.",
  "wet-film-too-thick":
    "A coat is put on wet at more than twice the thickness of the label's spreading rate.",
  "wood-not-stated": "A surface has no `wood`.",
  "wood-still-wet":
    "A coat without water goes on bare wood less than 2 h after it was dampened, washed, rinsed or sanded wet.",
  "wrong-argument":
    "An argument has no name, names no parameter of the recipe, is given twice, or is of another type.",
  "wrong-thinner": "A layer is thinned with something that its label or its family does not take.",
  "wrong-unit": "A quantity has a unit of another dimension than is needed there, or none.",
};
