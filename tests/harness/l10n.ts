/** The editor's way to say a text, where it speaks English: each `{0}` is what is given. */
export const l10n = {
  t: (text: string, ...given: readonly (string | number)[]): string =>
    text.replace(/\{(\d)\}/gu, (_, index: string) => String(given[Number(index)])),
};
