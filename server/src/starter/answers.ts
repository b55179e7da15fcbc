/**
 * The five questions of *New Recipe* and of `finishwright new`, with what may be answered: what piece, what wood, what is
 * on it now, what it should look like and bear, and where the work is done. Plain data for an editor's list and for a
 * terminal alike; what an answer rules out is left out of the questions behind it.
 */

export interface Choice<Word extends string = string> {
  readonly word: Word;
  /** What a person picks. */
  readonly label: string;
  /** What it means, in a few words more. */
  readonly detail: string;
}

const choices = <const Word extends string>(
  list: readonly (readonly [word: Word, label: string, detail: string])[],
): readonly Choice<Word>[] => list.map(([word, label, detail]) => ({ word, label, detail }));

export const PIECES = choices([
  ["table", "Table or desk", "a top and a base"],
  ["chair", "Chair", "frame, seat and back"],
  ["bench", "Bench or stool", "a seat on legs"],
  ["cabinet", "Cabinet or dresser", "a case with two doors"],
  ["bookcase", "Bookcase", "a case that is open in front"],
  ["chest", "Chest or box", "its outside"],
  ["board", "Shelf, board or door", "both faces and the edges"],
]);

export const WOODS = choices([
  ["oak", "Oak", "coarse, open pores, tannin"],
  ["ash", "Ash", "pale, open pores"],
  ["beech", "Beech", "pale, fine"],
  ["birch", "Birch", "pale; stains blotchy"],
  ["maple", "Maple", "very pale; stains blotchy"],
  ["cherry", "Cherry", "reddish; stains blotchy"],
  ["walnut", "Walnut", "dark brown, tannin"],
  ["mahogany", "Mahogany", "reddish brown, open pores"],
  ["teak", "Teak", "oily"],
  ["pine", "Pine or another softwood", "soft, with knots; stains blotchy"],
  ["veneer", "Veneer on board", "thin: it sands through soon"],
  ["plywood", "Plywood", "a thin face on crossed layers"],
  ["mdf", "MDF", "made for paint"],
  ["laminate", "Laminate", "a printed plastic sheet: nothing soaks in"],
  ["unknown", "I don't know", "treated as any wood that it may be"],
]);

export const COATINGS = choices([
  ["bare", "Nothing", "bare, or as it came from the factory"],
  ["varnish", "Varnish or polyurethane", "a hard, clear film"],
  ["lacquer", "Lacquer", "a thin, clear film, softened by lacquer thinner"],
  ["shellac", "Shellac or French polish", "softened by alcohol"],
  ["oil", "Oil", "in the wood, no film"],
  ["wax", "Wax", "a fingernail takes it off"],
  ["paint", "Paint", "it hides the wood"],
  ["unknown", "I don't know", "the spot tests that tell it come first"],
]);

export const LOOKS = choices([
  ["clear", "Clear and hard", "for every day: table tops, seats, children"],
  ["warm", "Warm and hard", "amber, for every day; slow to dry"],
  ["oiled", "Natural", "oiled, close to the wood, easily repaired"],
  ["stained", "Darker", "stained under a hard clear, for every day"],
  ["painted", "Painted", "for every day but the hardest wear"],
  ["shellac", "Shellac", "fine and traditional; keep it from drinks and heat"],
  ["waxed", "Waxed", "soft, for what is seldom touched"],
  ["outdoors", "For outdoors", "oiled, to stand in rain and sun"],
  ["kept", "As it is", "the old finish stays, cleaned and freshened up"],
]);

export const PLACES = choices([
  ["room", "A heated room", "20 C, with the windows open"],
  ["garage", "A garage or shed", "14 C and damp, so it dries slowly"],
  ["workshop", "A workshop", "18 C, with a fan"],
]);

type WordOf<List extends readonly Choice[]> = List[number]["word"];
export type PieceWord = WordOf<typeof PIECES>;
export type WoodWord = WordOf<typeof WOODS>;
export type CoatingWord = WordOf<typeof COATINGS>;
export type LookWord = WordOf<typeof LOOKS>;
export type PlaceWord = WordOf<typeof PLACES>;

/** `metric`: millimetres, Celsius, cubic metres. `inches`: inches, Fahrenheit, cubic feet. */
export type UnitSystem = "metric" | "inches";

export interface Answers {
  readonly piece: PieceWord;
  /** Of the whole piece: length x width x height; a usual one where nothing is said. */
  readonly size?: PieceSize;
  readonly wood: WoodWord;
  readonly now: CoatingWord;
  readonly look: LookWord;
  readonly place: PlaceWord;
  readonly units: UnitSystem;
}

/** In millimetres or in inches, as `units` of the answers says. */
export type PieceSize = readonly [length: number, width: number, height: number];

/** What may be on a material. */
export const coatingsOn = (wood: WoodWord): readonly Choice<CoatingWord>[] =>
  COATINGS.filter(({ word }) => {
    if (wood === "laminate") return word === "bare" || word === "paint";
    return wood !== "mdf" || !["oil", "shellac", "lacquer"].includes(word);
  });

/** What can come of a material with this on it. */
export const looksOf = (wood: WoodWord, now: CoatingWord): readonly Choice<LookWord>[] =>
  LOOKS.filter(({ word }) => isPossible(word, wood, now));

function isPossible(look: LookWord, wood: WoodWord, now: CoatingWord): boolean {
  // What nobody knows cannot be freshened up with its like.
  if (look === "kept") return now !== "bare" && now !== "unknown" && now !== "paint";
  if (wood === "laminate" || wood === "mdf") return look === "painted";
  if (look === "outdoors") return wood !== "veneer";
  return true;
}

const isWord = (list: readonly Choice[], word: unknown): boolean =>
  list.some((choice) => choice.word === word);

/** Whether something from outside is a set of answers that go together; its size is left to `readSize`. */
export function areAnswers(value: unknown): value is Omit<Answers, "size"> {
  if (typeof value !== "object" || value === null) return false;
  const { piece, wood, now, look, place, units } = value as Readonly<Record<string, unknown>>;
  const [material, coating] = [
    WOODS.find(({ word }) => word === wood),
    COATINGS.find(({ word }) => word === now),
  ];
  return (
    material !== undefined &&
    coating !== undefined &&
    isWord(PIECES, piece) &&
    isWord(coatingsOn(material.word), now) &&
    isWord(looksOf(material.word, coating.word), look) &&
    isWord(PLACES, place) &&
    (units === "metric" || units === "inches")
  );
}
