/** What to write in place of fields that people look for, by block; the message writes it out. */
export const RIGHT_LINES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  material: {
    price: "A price stands behind its container, such as `packs 1 L for 28.00`.",
    cost: "A price stands behind its container, such as `packs 1 L for 28.00`.",
    size: "A size stands with its price, such as `packs 1 L for 28.00`.",
    coats: "Coats stand in a recipe, such as `layer clear x 2`.",
    dries: "Write `touch`, `recoat` or `cure`, such as `recoat 4 h`.",
    dry: "Write `touch`, `recoat` or `cure`, such as `recoat 4 h`.",
    drying: "Write `touch`, `recoat` or `cure`, such as `recoat 4 h`.",
    tack: "Write when the next thing can go on, also leaf on its size, as `recoat 12 h`.",
    use: "Write when it has its full hardness, such as `cure 21 days`; earlier use is worked out from that.",
  },
  piece: {
    price:
      "Write what it cost, such as `bought 60.00`, what a new one costs, such as `new_price 1150.00`, or what it sells for, such as `sell_price 420.00`.",
    cost: "Write what it cost, such as `bought 60.00`.",
    value:
      "Write what a new one costs, such as `new_price 1150.00`, or what it sells for, such as `sell_price 420.00`.",
    size: "Sizes stand in a surface, such as `shape panel 1800 mm x 900 mm x 30 mm`.",
    wood: "Wood stands in a surface, such as `wood red oak`.",
    shape: "Put it in a surface, which begins with `surface top {`.",
    count: "How many there are stands in the job, such as `piece reading_chair x 6`.",
    note: "Put it in a `##` line above the piece.",
  },
  surface: {
    sides: "Faces stand behind the shape, such as `shape panel 600 mm x 400 mm x 18 mm, both faces`.",
    faces: "Faces stand behind the shape, such as `shape panel 600 mm x 400 mm x 18 mm, both faces`.",
    size: "Write its shape, such as `shape panel 1800 mm x 900 mm x 30 mm`.",
    finish: "Write what is on it, such as `existing alkyd paint, 2 coats`.",
    coats: "Coats stand behind the old finish, such as `existing alkyd paint, 2 coats`.",
    note: "Put it in a `##` line above the surface.",
  },
  shop: {
    location: "Write the air that the work dries in, such as `air 18 C, 60 % RH`.",
    place: "Write the air that the work dries in, such as `air 18 C, 60 % RH`.",
    temperature: "Write `air 18 C, 60 % RH`.",
    humidity: "Write `air 18 C, 60 % RH`.",
    size: "Write `room 45 m3, 2 air changes/h`.",
    loss: "Write it on the layer, where the gun is named: `by hvlp, transfer 60 %`.",
    heater: "Write what may set vapour alight as `ignition heater`.",
    stove: "Write what may set vapour alight as `ignition heater`.",
    burner: "Write what may set vapour alight as `ignition heater`.",
    boiler: "Write what may set vapour alight as `ignition pilot light`.",
    flame: "Write what may set vapour alight as `ignition pilot light`.",
    fire: "Write what may set vapour alight as `ignition heater`.",
    open: "Write `hours Mon to Fri 09:00 to 17:00`.",
  },
  recipe: {
    if: 'Say it on the lines themselves, such as `layer oil, if needed "it still drinks"` or `step sand 320, "if runs show"`.',
  },
  job: {
    step: "Work stands in a recipe: write `recipe preparing {` with this step in it, and here `apply preparing`.",
    recipe: "Write `apply`, such as `apply hard_clear(clear: hall_clear) to top`.",
    invoice: 'What is only to be read stands in a note, such as `note "invoice by the end of April"`.',
    date: "Write `start` or `ready`, such as `start 2027-03-08 09:00`.",
    note: "Put it in a `##` line above the job.",
  },
};
