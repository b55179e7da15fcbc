/** What reaches a surface, or the work in a shop, outdoors, as people read it. */
import { t, translated } from "../../../grammar/src/translate.ts";
import type { OutdoorsWord } from "../core/model/model.ts";
import { andList } from "../core/model/suggest.ts";

/** `outdoors, in rain and sun`, `outdoors, sheltered` */
export function outdoorsText(words: readonly OutdoorsWord[]): string {
  const reaching = words.filter((word) => word !== "sheltered");
  return [
    t`outdoors`,
    ...(words.includes("sheltered") ? [t`sheltered`] : []),
    ...(reaching.length > 0 ? [t`in ${andList(reaching.map(translated))}`] : []),
  ].join(", ");
}
