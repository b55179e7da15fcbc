/**
 * Word classes of the bench, as people name things in notes: see `knowledge/phrases.ts`. Several rules share them.
 */
import { type Phrases, type WordClasses, phrases as withClasses } from "../knowledge/phrases.ts";

const CLASSES: WordClasses = {
  // Liquids
  SOLVENT:
    "spirit|turps|turpentine|thinner|solvent|acetone|alcohol|meths|petrol|gasoline|kerosene|paraffin|naphtha|xylene|toluene|polish_remover|varnish_remover",
  FINISH:
    "varnish*|lacquer*|shellac|oil|linseed|tung|danish_oil|stain|paint|polyurethane|poly|wax|beeswax|primer|enamel|finish|coat|polish|sealer|undercoat",
  STRIP: "stripper|remover|sludge|goo|slurry|gunk|lye|caustic|acid|oxalic|bleach|ammonia|hardener|catalyst",
  LIQUID: "SOLVENT|FINISH|STRIP|cleaner",
  REST: "rest|leftover|left-over|remainder|remains|dregs|excess|surplus|left|over",
  TIN: "can|tin|pot|jar|drum|varnish_pot",
  // Fire
  FIRE: "fire|bonfire|campfire|fire_pit|stove|woodburner|wood_burner|woodstove|log_burner|furnace|fireplace|hearth|boiler|grate|brazier|incinerator|burn_barrel",
  HOB: "stove|woodstove|woodburner|hob|cooker|hotplate|hot_plate|gas_ring|gas|burner|range|primus|fire|heater|oven|flame|candle|tea_light|tealight|lamp|kitchener|grill|griddle|microwave",
  HEATER:
    "heater|stove|woodburner|wood_burner|woodstove|log_burner|furnace|gas_fire|electric_fire|log_fire|coal_fire|wood_fire|fireside|fireplace|hearth|brazier|heat_lamp|infrared_lamp|infra-red_lamp|sun_lamp|heat_gun|hair_dryer|hairdryer|hair_drier|hairdrier|pilot_light|oven|boiler|salamander",
  // People
  CHILD:
    "child|children|kid|toddler|baby|babies|infant|daughter|son|grandchild|grandchildren|grandson|granddaughter|little_girl|little_boy|little_one|schoolchild|schoolchildren|pupil|twins",
  SOMEBODY:
    "CHILD|grandmother|grandma|granny|grandfather|grandpa|mother|wife|husband|sister|brother|aunt|uncle|family|tenant|guest|visitor|reader|student|patient|lodger|watchman|caretaker|neighbour|neighbor|group|class|club|choir|meeting|somebody|someone|everybody|everyone",
  PET: "dog|puppy|cat|kitten|budgie|canary|parrot|bird|hamster|rabbit|guinea_pig|goldfish|aquarium|pet",
  // Rags
  RAG: "wad|towel|duster|rag|cloth|wipe|wadding|paper_towel|kitchen_towel|kitchen_roll|kitchen_paper|steel_wool|cotton_waste|applicator_pad|oily_ones|oily_towel|old_shirt",
};

export const phrases = (...patterns: readonly string[]): Phrases => withClasses(CLASSES, patterns);
