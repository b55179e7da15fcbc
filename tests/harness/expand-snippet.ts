/** A snippet of the editor as it stands in the text before anybody has filled it in. */

/** `${1:text}` is its text, `${1|a,b|}` its first choice, `$0` nothing; a tab is one step of the layout. */
export const expandSnippet = (body: string | readonly string[]): string =>
  [body]
    .flat()
    .join("\n")
    .replace(/\$\{\d+:([^}]*)\}/gu, "$1")
    .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/gu, "$1")
    .replace(/\$0/gu, "")
    .replace(/\t/gu, "  ");

/** All the texts that the choices of a snippet can make of it, one choice away from the first ones each. */
export const expandChoices = (body: readonly string[]): readonly string[] => {
  const text = body.join("\n");
  return [...text.matchAll(/\$\{\d+\|([^|]*)\|\}/gu)].flatMap((match) =>
    match[1]!
      .split(",")
      .map((choice) =>
        expandSnippet(text.slice(0, match.index) + choice + text.slice(match.index + match[0].length)),
      ),
  );
};
