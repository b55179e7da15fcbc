/** `finishwright/coloured`, a request of our own: the colours of a recipe that stands by itself, as in an example. */
import { createAnalyst } from "../../features/analyst.ts";
import type { ColouredParams, ColouredWord } from "../custom-requests.ts";

const FILE = "example.finish";

export const coloured = ({ text }: ColouredParams): readonly ColouredWord[] => {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  analyst.setFile(FILE, text);
  return analyst
    .analysis()
    .semanticTokens(FILE, "all")
    .map(({ span: { start, end }, type }) => ({ start, end, type }));
};
