/**
 * axe-core in a page: what it finds against WCAG 2.2 AA and its own best practice. A page whose policy allows no script of
 * others gets it before its own, by `addInitScript`.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

/** The script that puts it into a page. */
export const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Each rule that is broken, with the first element. */
export const violations = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    // biome-ignore lint/suspicious/noExplicitAny: it has put itself there.
    const found = await (globalThis as any).axe.run({
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    });
    return found.violations.map(
      // biome-ignore lint/suspicious/noExplicitAny: as axe-core has it.
      ({ id, nodes }: any) => `${id}: ${nodes[0].html.slice(0, 160)} (${nodes.length})`,
    );
  });
