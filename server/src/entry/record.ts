/** What counts the record of a job, bundled beside the server: see `recordBeside` of `client/bundles.ts`. */
export { troubleOf } from "../core/knowledge/troubles.ts";
export * from "../core/model/lower-record.ts";
export * from "../core/record/amend.ts";
export * from "../core/rules/record/record-air-outside-limits.ts";
export * from "../core/rules/record/record-coat-too-late.ts";
export * from "../core/rules/record/record-coat-too-soon.ts";
export * from "../core/rules/record/record-differs.ts";
export * from "../core/rules/record/record-not-in-recipe.ts";
export * from "../core/rules/record/record-skips-coat.ts";
export * from "../core/rules/record/record-trouble.ts";
export * from "../core/rules/recorded-coats.ts";
export * from "../core/rules/trouble-causes.ts";
export * from "../core/totals/recorded-amounts.ts";
export * from "../core/totals/recorded-plan.ts";
export * from "../features/completion/record-lines.ts";
export * from "../features/hover/record-cards.ts";
export * from "../features/record-next.ts";
export * from "../features/repair-to-write.ts";
