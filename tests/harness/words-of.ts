import { type VocabularyName, vocabulary } from "../../server/src/core/knowledge/vocabularies.ts";
import { wordList } from "../../server/src/core/knowledge/words.ts";

/** The words of a vocabulary, without what is said of each. */
export const wordsOf = (name: VocabularyName): readonly string[] => wordList(vocabulary(name));
