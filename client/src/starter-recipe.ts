/** What *New Recipe* starts with: small, complete and free of findings, with remarks that say how to go on. */
export const SKELETON = `# A recipe to start from. The first word of each line belongs to the notation;
# names, titles and numbers are yours. Hover over a word to read what it means,
# and over a layer, a wait or the job to see what follows from it.

## What stands in the shop, with its surfaces: shape, wood, and what is on it already.
piece side_table "Side table" {
  built   1990
  surface top {
    shape    panel 900 mm x 500 mm x 22 mm
    wood     red oak
    existing bare
    wear     normal
  }
}

## Where and when the work is done. Waits are calculated for this air.
shop workshop "Workshop" {
  air      20 C, 50 % RH
  room     60 m3, 4 air changes/h
  hours    Mon to Fri 09:00 to 17:00
  currency EUR
}

## How it is done, line by line. A built-in clear will do at first; a \`material\` of your own
## says what its label does.
recipe clear_wood(clear: material, coats: number = 3) {
  for    wood, veneer
  safety dust_mask, gloves, ventilate 10 air changes/h
  step   sand 120, 150, 180
  step   dust
  # Water raises the grain now, so that the first coat does not.
  step   dampen
  wait   2 h
  step   sand 220
  step   dust
  # Each coat waits until it can be recoated; then it is sanded and dusted.
  layer  clear x coats, by pad, between sand 220
  wait   until cured
}

## The recipe on a surface. With \`start 2027-03-08 09:00\` it gets its dates.
job first_job "First job" {
  piece side_table
  in    workshop
  apply clear_wood(clear: waterborne_polyurethane) to top
}
`;
