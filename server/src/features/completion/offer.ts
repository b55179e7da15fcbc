/**
 * Offers: what can stand at the cursor, before it is known what is typed already and what gets replaced.
 */
import type { Span, Token } from "../../../../grammar/src/tree.ts";
import type { Recipe } from "../../core/model/model.ts";
import type { Program, Scope } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import type { Resolution } from "../../core/resolution/resolve.ts";
import type { CompletionEntry, CompletionKind } from "../types.ts";
import type { Cursor } from "./cursor.ts";

export interface CompletionContext {
  readonly program: Program;
  readonly file: FileId;
  readonly scope: Scope;
  readonly cursor: Cursor;
  /** The recipe in which the cursor stands, as far as it can be read. */
  readonly recipe?: Recipe;
  /** What the names mean in the declaration in which the cursor stands. */
  readonly resolution?: Resolution;
}

export interface Offer {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  readonly documentation?: string;
  /** Snippet syntax; the label if absent. */
  readonly snippet?: string;
  /** Plain text; the label if absent. */
  readonly insert?: string;
  /** Where replacing starts, for words that go together; the half-typed word if absent. */
  readonly from?: number;
}

/** Offers as entries, in the order in which they were made; a label is offered once. */
export function entriesOf(cursor: Cursor, offers: readonly Offer[]): readonly CompletionEntry[] {
  const seen = new Set<string>();
  return offers
    .filter(({ label }) => !seen.has(label) && seen.add(label))
    .map((offer, index) => {
      const replace: Span = { start: offer.from ?? cursor.replace.start, end: cursor.replace.end };
      return {
        label: offer.label,
        kind: offer.kind,
        ...(offer.detail ? { detail: offer.detail } : {}),
        ...(offer.documentation ? { documentation: offer.documentation } : {}),
        insert: offer.snippet ?? fitted(cursor, offer.insert ?? offer.label),
        snippet: offer.snippet !== undefined,
        replace,
        sort: String(index).padStart(4, "0"),
      };
    });
}

/** What an insertion brings along is left out where the text has it already. */
function fitted({ rest }: Cursor, insert: string): string {
  if (insert.endsWith(": ") && /^\s*:/u.test(rest)) return insert.slice(0, -2);
  return /^\s/u.test(rest) ? insert.trimEnd() : insert;
}

/** The text of a user or of the vocabulary inside a snippet. */
export const snippetText = (text: string): string => text.replace(/[\\$}]/gu, "\\$&");

export interface Phrase {
  readonly label: string;
  readonly detail?: string;
  readonly documentation?: string;
}

/** A place in a snippet that the cursor visits, with what stands there at first; the last is 0. */
export const hole = (number: number, text: string): string => `\${${number}:${snippetText(text)}}`;

/**
 * Phrases of several words (`waterborne polyurethane`): what begins with the words typed so far, replacing all of them.
 * `words` are the tokens of the phrase before the half-typed word.
 */
export function phraseOffers(words: readonly Token[], phrases: readonly Phrase[]): readonly Offer[] {
  const typed = words.map(({ text }) => `${text.toLowerCase()} `).join("");
  const [first] = words;
  return phrases
    .filter(({ label }) => label.toLowerCase().startsWith(typed))
    .map((phrase) => ({ ...phrase, kind: "word" as const, ...(first ? { from: first.start } : {}) }));
}

/** The tokens behind the last comma of a list. */
export function afterLastComma(tokens: readonly Token[]): readonly Token[] {
  return tokens.slice(tokens.findLastIndex(({ text }) => text === ",") + 1);
}

export const isComma = (token: Token | undefined): boolean => token?.text === ",";
