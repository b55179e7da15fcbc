/**
 * What a family tells of itself, its sentence and the sources of its figures. Only cards and lists that a person asks for show
 * it, so the server's bundle has none of it, and its answers have a copy of the table: see `client/told-beside.ts`.
 */
import type { Family } from "../core/knowledge/family-schema.ts";

export type FamilyTold = Pick<Family, "doc" | "sources">;

export const familyTold = (family: Family): FamilyTold => family;
