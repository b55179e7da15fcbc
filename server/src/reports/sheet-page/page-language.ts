/// <reference lib="dom" />
/** The language of an HTML sheet: a sheet that is not English carries what its script says, by the short names of the texts. */
import { languageByKeys, speak } from "../../../../grammar/src/translate.ts";

export function speakAsThePage(): void {
  const carried = document.querySelector("script[data-texts]");
  if (carried === null) return;
  const texts: Readonly<Record<string, string>> = JSON.parse(carried.textContent ?? "{}");
  speak(
    languageByKeys(document.documentElement.lang, (key) =>
      Object.hasOwn(texts, key) ? texts[key] : undefined,
    ),
  );
}
