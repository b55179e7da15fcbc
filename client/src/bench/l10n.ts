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
