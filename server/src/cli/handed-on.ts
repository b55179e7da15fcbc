/** `--with`: what of a job is handed on although it is kept back where nobody asks for it. */
import { Option } from "commander";
import { orList } from "../core/model/suggest.ts";
import { HANDED_ON, type HandedOn } from "../views/handed-on.ts";
import { UsageError } from "./io.ts";

export const withOption = (): Option =>
  new Option("--with <facts>", `also say these, with commas between: ${HANDED_ON.join(", ")}`);

/** The words of a list; one that cannot be handed on is wrong use. */
export function handedOnOf(list: string | undefined): readonly HandedOn[] {
  const asked = list === undefined ? [] : list.split(",").map((word) => word.trim());
  return asked.map((word) => {
    const known = HANDED_ON.find((each) => each === word);
    if (known) return known;
    throw new UsageError(
      `\`--with ${list}\`: \`${word}\` cannot be asked for. It takes ${orList(HANDED_ON.map((each) => `\`${each}\``))}, with a comma between several.`,
    );
  });
}
