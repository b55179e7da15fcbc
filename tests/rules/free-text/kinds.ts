/** One kind of danger, with sentences that tell to do it, by the rule that must speak, and sentences that do not. */
export interface Kind {
  readonly kind: string;
  /** The recipe into which each sentence is put as a note. */
  readonly base: BaseName;
  /** By rule; of several, with a space between, any one will do. */
  readonly dangerous: Readonly<Record<string, readonly string[]>>;
  readonly benign: readonly string[];
}

/** Recipes that have no findings of their own; `NOTE` is where the sentence goes. */
export const BASES = {
  oil: `recipe oiled {
  for    wood
  safety gloves, eye_protection, dust_mask, vapour_respirator, ventilate, no_ignition, wet_rags, hearing
  NOTE
  layer  oil_varnish, by cloth, wiped off
  wait   until cured
}
`,
  strip: `recipe stripped {
  for    wood
  safety gloves, eye_protection, dust_mask, vapour_respirator, ventilate, no_ignition, wet_rags, hearing
  NOTE
  step   strip with paint_stripper
  step   clean with mineral_spirits
  wait   24 h
  step   sand 120, 150
  step   dust
}
`,
  soap: `recipe washed {
  for    wood
  safety gloves, eye_protection, dust_mask, ventilate
  NOTE
  step   clean with soap
  step   clean with water
  wait   72 h
}
`,
  sprayed: `## Part B holds polyisocyanate.
material hardener "Hardener" {
  family waterborne polyurethane
}
material clear "Two-part clear" {
  family waterborne polyurethane
  pot_life 4 h
}
recipe sprayed {
  for    wood
  safety gloves, eye_protection, supplied_air, ventilate 100 air changes/h, no_ignition, hearing, keep_out, dust_mask
  NOTE
  layer  clear, by hvlp
  wait   until cured
}
`,
  sanded: `recipe sanded {
  for    wood
  safety gloves, eye_protection, dust_mask, hearing, ventilate
  NOTE
  step   sand 120, 150
  step   dust
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
  lead: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, gloves, eye_protection, dust_mask, hearing, ventilate, keep_out
  NOTE
  step   scrape "misted with water"
  step   clean with water
}
piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}
job legs {
  piece table
  apply prepare to legs
}
`,
} as const;
export type BaseName = keyof typeof BASES;
