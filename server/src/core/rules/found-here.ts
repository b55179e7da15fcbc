/**
 * Where a page of a rule tells what is found in the recipe above, in the pages that come with the extension: the rules are at
 * hand there, and tell it themselves. In the pages of the project it stands as it is.
 */
export const FOUND_HERE = "<!-- What is found in it -->";

/** A page without what is found: each row of marked lines and quotations is this mark. */
export const withoutFound = (markdown: string): string =>
  markdown.replaceAll(/(?:```text\n[\s\S]*?\n```\n\n>.*(?:\n>.*)*\n\n)+/gu, (found) =>
    found.startsWith("```text\n") ? `${FOUND_HERE}\n\n` : found,
  );

/** As it is shown where nobody can tell what is found. */
export const withoutMarks = (markdown: string): string => markdown.replaceAll(`${FOUND_HERE}\n\n`, "");
