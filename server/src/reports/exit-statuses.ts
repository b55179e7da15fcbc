/** What the program ends with, in lines for the help and the manual page; what else 1 means the help of a command says. */
export const EXIT_STATUSES: readonly (readonly [status: string, meaning: string])[] = [
  ["0", "done, and nothing at or above the level asked for was found"],
  [
    "1",
    "findings; or nothing found by `find`, a change by `diff --exit-code`,\na file that `format --check` would change",
  ],
  ["2", "wrong use, a file that cannot be read, or a bug in Finishwright"],
];
