/** `finishwright/rules`: all rules by group, with the pages that the client can show. */
import { expect, test } from "vitest";
import { ruleIds } from "../../server/src/core/rules/registry.ts";
import { pageNamed, type RuleEntry } from "../../server/src/lsp/custom-requests.ts";
import { startClient } from "./harness.ts";

test("every rule is there once, groups together, each with a sentence and its page", async () => {
  const client = await startClient({ rulePages: "pages:" });
  const rules = await client.request<readonly RuleEntry[]>("finishwright/rules", {});
  expect(rules.map(({ id }) => id).toSorted()).toEqual(ruleIds().toSorted());
  const changes = rules.filter(({ group }, i) => group !== rules[i - 1]?.group);
  expect(changes).toHaveLength(new Set(rules.map(({ group }) => group)).size);
  expect(rules).toContainEqual({
    id: "grit-jump",
    group: "Preparation",
    summary: expect.stringMatching(/^From one grit to the next/u),
    page: "pages:/grit-jump.md",
  });
  await client.end();
});

test("a client whose tabs say the end of an address gets the pages by their titles, which lead back to their names", async () => {
  const client = await startClient({ rulePages: "pages:", pageTitles: true });
  const rules = await client.request<readonly RuleEntry[]>("finishwright/rules", {});
  const page = (id: string) => rules.find((rule) => rule.id === id)?.page;
  expect(page("waterborne-over-uncured-oil")).toBe("pages:/Waterborne%20over%20uncured%20oil");
  for (const { id } of rules)
    expect(pageNamed(decodeURIComponent(page(id)!.slice("pages:/".length)))).toBe(id);
  await client.end();
});
