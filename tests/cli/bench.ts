/**
 * A small job whose figures can be made in the head: 2 m2, one clear of 10 m2/L, two coats of 0.22 L with their spare.
 */
export const STOCK = `material clear_coat "Clear" {
  family waterborne polyurethane
  covers 10 m2/L
  solids 30 %
  recoat 2 h to 24 h
  cure   1 day
  rated  20 C, 50 % RH
  voc    100 g/L
  packs  500 mL for 10.00, 1 L for 16.00
}
`;

export const JOB = `use "stock.finish"

piece shelf "Shelf" {
  built     1990
  bought    5.00
  new_price 100.00
  surface   board {
    shape panel 2 m x 1 m
    wood  beech
    wear  light
  }
}
shop room {
  air      20 C, 50 % RH
  hours    Mon to Fri 09:00 to 17:00
  labour   20.00 per h
  currency EUR
}
recipe clearing(clear: material, coats: number = 2) {
  for    wood
  safety dust_mask
  step   dust, takes 30 min
  layer  clear x coats, takes 15 min {
    wait until recoat
  }
  wait   until recoat
}
job shelf_job "One shelf" {
  piece    shelf
  in       room
  start    2027-03-08 09:00
  apply    clearing(clear: clear_coat) to board
  supplies 2.00
}
`;

export const FILES = { "stock.finish": STOCK, "job.finish": JOB } as const;
