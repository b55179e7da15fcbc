/** `demo`: what the program has to say on its own samples. For the first minute with it; not listed in the help. */
import path from "node:path";
import type { AddCommand } from "../command-context.ts";
import { check } from "./check.ts";
import { totals } from "./totals.ts";

const MISTAKES = ["mistakes.finish"] as const;
const JOBS = [
  "reading-tables.finish",
  "chairs.finish",
  "childrens-table.finish",
  "card-catalogue.finish",
] as const;

export const addDemo: AddCommand = (program, ctx) => {
  program
    .command("demo", { hidden: true })
    .description("Checks the sample with mistakes, then adds up the jobs of the reading room.")
    .action(async () => {
      const { io } = ctx;
      const samples = path.join(io.home, "samples");
      const nearest = path.relative(io.cwd, samples);
      const named = (names: readonly string[]): readonly string[] =>
        names.map((name) => path.join(nearest.startsWith("..") ? samples : nearest, name));
      io.stdout.write(`> finishwright check ${named(MISTAKES).join(" ")}\n\n`);
      const found = await check(ctx, named(MISTAKES), { format: "text", failOn: "error" });
      io.stdout.write(`\n> finishwright totals ${named(JOBS).join(" ")}\n\n`);
      const added = await totals(ctx, named(JOBS), { format: "text" });
      // That the mistakes are found is what was to be shown.
      ctx.finish(found === 2 || added === 2 ? 2 : 0);
    });
};
