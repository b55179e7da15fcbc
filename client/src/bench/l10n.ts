/** Texts of the page in the language of the editor. What the server says (findings, names of steps, figures) comes as it is. */

export interface L10n {
  /** Of the person, for dates and decimals, where the page has texts in it; English is told as in Europe. */
  readonly language?: string;
  /** The text in the person's language, with `{0}` and so on filled; in English where it has none. */
  t(text: string, ...args: readonly (string | number)[]): string;
}

/** `bundle`: the person's texts by the English ones; without any, all is English. */
export const l10nOf = (bundle: Readonly<Record<string, string>>, language = "en"): L10n => ({
  language: Object.keys(bundle).length > 0 ? language : "en",
  t: (text, ...args) =>
    (Object.hasOwn(bundle, text) ? bundle[text]! : text).replace(/\{(\d)\}/gu, (whole, at: string) =>
      String(args[Number(at)] ?? whole),
    ),
});

/** What the server calls the parts of a job, which are few; another name stays as it is. */
export function labelOf(name: string, l10n: L10n): string {
  switch (name) {
    case "Owner":
      return l10n.t("Owner");
    case "Shop":
      return l10n.t("Shop");
    case "Air":
      return l10n.t("Air");
    case "After the job":
      return l10n.t("After the job");
    case "Wanted by":
      return l10n.t("Wanted by");
    case "Hands-on":
      return l10n.t("Hands-on");
    case "last work":
      return l10n.t("last work");
    case "light use":
      return l10n.t("light use");
    case "full use":
      return l10n.t("full use");
    case "Labour":
      return l10n.t("Labour");
    case "Materials":
      return l10n.t("Materials");
    case "Pieces, as bought":
      return l10n.t("Pieces, as bought");
    case "Supplies":
      return l10n.t("Supplies");
    case "Total":
      return l10n.t("Total");
    case "Saved against new":
      return l10n.t("Saved against new");
    case "More than new":
      return l10n.t("More than new");
    case "Left of the budget":
      return l10n.t("Left of the budget");
    case "Over the budget":
      return l10n.t("Over the budget");
    case "keep as it is":
      return l10n.t("keep as it is");
    case "redo":
      return l10n.t("redo");
    case "buy new":
      return l10n.t("buy new");
    case "redo and sell":
      return l10n.t("redo and sell");
    case "money out":
      return l10n.t("money out");
    case "hours":
      return l10n.t("hours");
    case "their worth":
      return l10n.t("their worth");
    case "money in":
      return l10n.t("money in");
    case "left":
      return l10n.t("left");
    case "being planned":
      return l10n.t("being planned");
    case "not known":
      return l10n.t("not known");
    case "not counted":
      return l10n.t("not counted");
    case "none":
      return l10n.t("none");
    default:
      return name;
  }
}

export function severityText(severity: string, l10n: L10n): string {
  switch (severity) {
    case "error":
      return l10n.t("error");
    case "warning":
      return l10n.t("warning");
    case "information":
      return l10n.t("note");
    default:
      return l10n.t("hint");
  }
}
