/** `explain`: what a rule reports, why, and what to do instead. */
import { closest } from "../../core/model/suggest.ts";
import { explainText } from "../../core/rules/explain.ts";
import { ruleById, ruleIds } from "../../core/rules/registry.ts";
import { factsOf } from "../../features/rule-facts.ts";
import { rulesText } from "../../reports/rules-text.ts";
import { type AddCommand, outputColours, outputColumns } from "../command-context.ts";
import { UsageError } from "../io.ts";

export const addExplain: AddCommand = (program, { io, finish }) => {
  program
    .command("explain")
    .summary("what a rule reports, why, and what to do instead")
    .description("Explains a rule by its name, as findings print it; without a name it lists all rules.")
    .argument("[rule]", "name of a rule, such as coat-over-wax")
    .action((id: string | undefined) => {
      const columns = outputColumns(io);
      if (id === undefined) {
        const rules = ruleIds().flatMap((each) => ruleById(each) ?? []);
        io.stdout.write(rulesText(rules, { colours: outputColours(io), columns }));
        return finish(0);
      }
      const rule = ruleById(id);
      if (!rule) {
        const near = closest(id, ruleIds());
        const rest = near ? `Did you mean \`${near}\`?` : "`finishwright explain` lists them all.";
        throw new UsageError(`There is no rule \`${id}\`. ${rest}`);
      }
      io.stdout.write(explainText(rule, factsOf(rule), columns));
      return finish(0);
    });
};
