/**
 * Referents: what names stand for. Two names mean the same thing if their referents have the same key.
 */
import type { ModelDeclaration, RecipeParameter, Surface } from "../../core/model/model.ts";
import { type Place, placeKey } from "../../core/place.ts";

export type ReferentKind = ModelDeclaration["kind"] | "surface" | "parameter";

export interface Referent {
  readonly kind: ReferentKind;
  readonly name: string;
  readonly key: string;
  /** Where its name is declared; absent for built-in materials. */
  readonly place?: Place;
}

export function declared(kind: ReferentKind, name: string, place: Place): Referent {
  return { kind, name, key: placeKey(place), place };
}

export function modelReferent(model: ModelDeclaration): Referent {
  // Only built-in materials stand in no declaration.
  return model.declaration === ""
    ? { kind: model.kind, name: model.name, key: `built-in ${model.name}` }
    : declared(model.kind, model.name, model.namePlace);
}

export const surfaceReferent = ({ name, namePlace }: Surface): Referent =>
  declared("surface", name, namePlace);

export const parameterReferent = ({ name, place }: RecipeParameter): Referent =>
  declared("parameter", name, place);

/** Without repetitions, in the order of first mention. */
export const distinct = (referents: readonly Referent[]): readonly Referent[] => [
  ...new Map(referents.map((referent) => [referent.key, referent])).values(),
];
