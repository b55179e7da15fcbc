/** What a package of recipes says of itself in its `package.json`, as npm defines these fields. */
import { t } from "../../../grammar/src/translate.ts";

export interface PackageFacts {
  readonly version?: string;
  readonly description?: string;
  /** The name alone: where to write to is nobody's business here. */
  readonly author?: string;
  /** An SPDX expression, as a rule. */
  readonly licence?: string;
  /** Whether it is not for publishing. */
  readonly isPrivate: boolean;
}

/** Longer texts are cut short. */
const LONGEST = 200;

/** Undefined for a text that is no package's; a field that is not as npm has it is left out. */
export function packageFacts(text: string): PackageFacts | undefined {
  const read = parsed(text);
  if (typeof read !== "object" || read === null || Array.isArray(read)) return undefined;
  const field = (of: object, name: string): string | undefined => {
    const value: unknown = Object.hasOwn(of, name) ? Reflect.get(of, name) : undefined;
    return typeof value === "string" && value.trim() !== "" ? shortened(value.trim()) : undefined;
  };
  const said: unknown = Reflect.get(read, "author");
  const author =
    typeof said === "object" && said !== null ? field(said, "name") : nameIn(field(read, "author"));
  const all = {
    version: field(read, "version"),
    description: field(read, "description"),
    author,
    licence: field(read, "license"),
  };
  return {
    ...Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)),
    isPrivate: Reflect.get(read, "private") === true,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** `The town library <hall@example.org> (https://example.org)` */
function nameIn(author: string | undefined): string | undefined {
  const name = author?.split(/[<(]/u)[0]?.trim();
  return name === "" ? undefined : name;
}

const shortened = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST).trimEnd()}…`;

/** `version 1.0.0, by The town library, CC-BY-4.0`; empty where nothing is said. */
export const packageText = ({ version, author, licence }: Partial<PackageFacts>): string =>
  [
    ...(version === undefined ? [] : [t`version ${version}`]),
    ...(author === undefined ? [] : [t`by ${author}`]),
    ...(licence === undefined ? [] : [licence]),
  ].join(", ");
