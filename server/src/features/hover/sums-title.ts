/** Stands above what a reader looks up, below what is asked first: a client that can fold it away does. */
import { t } from "../../../../grammar/src/translate.ts";

export const sumsTitle = (): string => `**${t`All figures, with their sums`}**`;
