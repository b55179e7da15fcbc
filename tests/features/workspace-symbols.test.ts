/** What of all files comes up for some letters, and in which order. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const FILES = {
  "stock.finish": `use "other.finish"
material hall_clear "Satin clear" {
}
material clear {
}
material old_clear_coat {
}
material {
}
`,
  "room.finish": `piece reading_table "Table" {
  surface top {
  }
  surface {
  }
}
recipe hard_clear(top_coat: material) {
  layer clear
}
shop mill {
}
job half_a_class_chair {
}
`,
};

function found(query: string): readonly string[] {
  return analyse(FILES)
    .workspaceSymbols(query)
    .map(({ kind, name, container, file, nameSpan }) => {
      const text = FILES[file as keyof typeof FILES].slice(nameSpan.start, nameSpan.end);
      return `${kind} ${container ? `${container}.` : ""}${name} (${file}, ${text})`;
    });
}

test("everything with a name, for no letters at all", () => {
  expect(found("").toSorted()).toEqual([
    "job half_a_class_chair (room.finish, half_a_class_chair)",
    "material clear (stock.finish, clear)",
    "material hall_clear (stock.finish, hall_clear)",
    "material old_clear_coat (stock.finish, old_clear_coat)",
    "piece reading_table (room.finish, reading_table)",
    "recipe hard_clear (room.finish, hard_clear)",
    "shop mill (room.finish, mill)",
    "surface reading_table.top (room.finish, top)",
  ]);
});

test("the name itself, then the beginning of a word in it, shorter names first", () => {
  expect(found("clear")).toEqual([
    "material clear (stock.finish, clear)",
    "material hall_clear (stock.finish, hall_clear)",
    "recipe hard_clear (room.finish, hard_clear)",
    "material old_clear_coat (stock.finish, old_clear_coat)",
  ]);
});

test("letters in their order, in any case, with gaps", () => {
  expect(found("HLCLR")).toEqual([
    "material hall_clear (stock.finish, hall_clear)",
    "job half_a_class_chair (room.finish, half_a_class_chair)",
  ]);
  expect(found("rclae")).toEqual([]);
});

test("words apart are found as one name, and words of a title at the end", () => {
  expect(found("hall clear")).toEqual(["material hall_clear (stock.finish, hall_clear)"]);
  expect(found("satin cl")).toEqual(["material hall_clear (stock.finish, hall_clear)"]);
  expect(found("table")).toEqual(["piece reading_table (room.finish, reading_table)"]);
});
