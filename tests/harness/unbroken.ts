/** Tables of a terminal with their broken lines joined again, so that a test need not say where they break. */
export const unbroken = (text: string): string => text.replaceAll(/\n {8,}(?=\S)/gu, " ");
