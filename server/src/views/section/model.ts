/**
 * A cut through a surface as it is when the job is done, as plain data: the wood, the old coats on it and the new ones.
 * The drawings on sheets and in editors are made of this; nothing of a drawing stands here but colours.
 */

export interface Section {
  /** The surface: `Top`. */
  readonly title: string;
  readonly wood: SectionWood;
  /** What was there before, from the wood up, with equal neighbours together. */
  readonly old: readonly OldCoats[];
  /** Coats of this job that are still there at its end, from the wood up. */
  readonly coats: readonly SectionCoat[];
  /** Dry film of the new coats, micrometres; undefined where that of one is not known. */
  readonly filmUm?: number;
}

/** How the cut face of the wood looks. */
export type Grain = "ring-porous" | "diffuse-porous" | "softwood" | "board" | "slick" | "metal" | "unknown";

export interface SectionWood {
  /** `red oak, veneer 0.6 mm`; `not stated`. */
  readonly name: string;
  /** `taken as bare: nothing is stated`; absent where its piece says what is on it. */
  readonly assumed?: string;
  readonly grain: Grain;
  /** Set where a veneer lies on a core. */
  readonly veneerMm?: number;
  /** `#rrggbb` */
  readonly fill: string;
}

export interface OldCoats {
  readonly title: string;
  readonly count: number;
  /** Stays under the new coats. */
  readonly isKept: boolean;
  /** Number of the step, of this surface, that takes it off. */
  readonly removedBy?: number;
  readonly isAbraded: boolean;
  /** `#rrggbb` */
  readonly fill: string;
}

export interface SectionCoat {
  /** `Waterborne satin clear` */
  readonly title: string;
  /** 1 … `coats` of the line that puts it on; 0 where it is not put on as a coat, such as wax that is buffed on. */
  readonly coat: number;
  readonly coats: number;
  /** Number of the step of this surface. */
  readonly step: number;
  /** Position in the run's list of actions, by which a plan and the editor find it. */
  readonly index: number;
  /** False for what goes into the wood, or lies on it as thinly as wax. */
  readonly isFilm: boolean;
  /** Dry and wet film, micrometres; undefined where not known. */
  readonly dryUm?: number;
  readonly wetUm?: number;
  /** Litres of this coat for all pieces, spare included; undefined where not known. */
  readonly litres?: number;
  /** `#rrggbb` */
  readonly fill: string;
  /** Lets what is below show. */
  readonly isClear: boolean;
  /** In the material's word: `satin`. */
  readonly sheen?: string;
  /** Share of the face that gleams, 0 matt to 1 gloss. */
  readonly gleam: number;
  /** Decided at the bench: may be left out. */
  readonly isOptional: boolean;
}
