/** What reaches a surface, or the work in a shop, outdoors, as people read it. */
import type { OutdoorsWord } from "../core/model/model.ts";
import { andList } from "../core/model/suggest.ts";

/** `outdoors, in rain and sun`, `outdoors, sheltered` */
export function outdoorsText(words: readonly OutdoorsWord[]): string {
  const reaching = words.filter((word) => word !== "sheltered");
  return [
    "outdoors",
    ...(words.includes("sheltered") ? ["sheltered"] : []),
    ...(reaching.length > 0 ? [`in ${andList(reaching)}`] : []),
  ].join(", ");
}
