/**
 * The extension's manifest and package, as far as they can be tried without an editor.
 *
 * What a user gets must hold what the manifest points at and nothing else, must start only where there is a recipe,
 * and must not say that it runs on an editor that it was not written for. `npm run build` makes the bundles; `npm test`
 * does that first.
 */
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { expect, test } from "vitest";
import { BUNDLES } from "../../client/bundles.ts";
import { packedFiles } from "../../client/packing/list.ts";
import { SAMPLE_NAMES } from "../../client/src/place-samples.ts";
import { NAME_SCOPES, SCOPES } from "../../grammar/src/textmate.ts";
import type { Severity } from "../../server/src/core/findings.ts";
import { textOf } from "../../server/src/core/findings.ts";
import { TOKEN_TYPES } from "../../server/src/features/types.ts";
import { findingsLines } from "../../server/src/reports/findings-lines.ts";

const ROOT = path.join(import.meta.dirname, "../..");
const readText = (name: string): string => readFileSync(path.join(ROOT, name), "utf8");
const manifest = JSON.parse(readText("package.json"));

const packaged = packedFiles("vsix");

test("the package holds what was chosen, all of it there, and no sources, tests or dependencies", () => {
  const kinds = packaged.filter(
    (name) =>
      !/^(?:client|server)\/(?:dist|docs|l10n|media|schemas|snippets|syntaxes|walkthrough)\//.test(name),
  );
  expect(kinds.sort()).toEqual(
    [
      "CHANGELOG.md",
      "LICENSE",
      "README.md",
      "THIRD-PARTY-NOTICES.txt",
      "client/language-configuration.json",
      "package.json",
      "package.nls.de.json",
      "package.nls.json",
      // What Open the Samples copies.
      ...SAMPLE_NAMES.map((name) => `samples/${name}`),
    ].sort(),
  );
});

interface Walkthrough {
  readonly icon: string;
  readonly steps: readonly {
    readonly description: string;
    readonly media: { readonly svg?: string; readonly markdown?: string };
    readonly completionEvents: readonly string[];
  }[];
}

test("everything that the manifest points at is in the package", () => {
  const { contributes } = manifest;
  const named: readonly string[] = [
    manifest.main,
    manifest.browser,
    manifest.icon,
    contributes.languages[0].configuration,
    contributes.languages[0].icon.light,
    contributes.languages[0].icon.dark,
    ...contributes.grammars.map((grammar: { path: string }) => grammar.path),
    ...contributes.snippets.map((snippets: { path: string }) => snippets.path),
    ...contributes.jsonValidation.map(({ url }: { url: string }) => url),
    ...contributes.walkthroughs.flatMap((walkthrough: Walkthrough) => [
      walkthrough.icon,
      ...walkthrough.steps.map(({ media }) => media.svg ?? media.markdown ?? ""),
    ]),
  ];
  for (const name of named) expect(packaged).toContain(path.posix.normalize(name));
});

test("it is small enough to download without a thought", () => {
  const sizes = packaged.map((name) => statSync(path.join(ROOT, name)).size);
  // Neither minified nor compressed; the package itself is about a seventh of it.
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(9_600_000);
});

test("it runs wherever VS Code does: in a browser, in virtual folders and in those that nobody trusts", () => {
  expect(manifest.capabilities).toEqual({
    // A folder that nobody trusts gets everything but what reads elsewhere.
    untrustedWorkspaces: {
      supported: "limited",
      description: "%trust.limited%",
      restrictedConfigurations: ["finishwright.use.readAlso"],
    },
    virtualWorkspaces: true,
  });
  // No workspace can make it, trusted or not.
  expect(manifest.contributes.configuration.properties["finishwright.use.readAlso"].scope).toBe("machine");
  // In a package of ES modules the web host takes every other ending for an ES module, and loads none.
  expect(manifest.browser).toMatch(/\.cjs$/);
});

test("it wakes for recipes only", () => {
  // VS Code wakes an extension for a language that it contributes with a configuration, and nothing else is asked for.
  expect(manifest.activationEvents).toBeUndefined();
  expect(manifest.contributes.languages[0].configuration).toBeDefined();
});

test("recipes are formatted by this extension, and when is the user's choice", () => {
  const defaults = manifest.contributes.configurationDefaults["[finish]"];
  expect(defaults["editor.defaultFormatter"]).toBe(`${manifest.publisher}.${manifest.name}`);
  expect(Object.keys(defaults).filter((name) => /^editor\.formatOn/.test(name))).toEqual([]);
});

test("what the server colours by meaning has the colours of the grammar, so that none jumps when it answers", () => {
  const [{ language, scopes }] = manifest.contributes.semanticTokenScopes;
  expect(language).toBe("finish");
  const { material, piece, surface, shop, recipe, job } = NAME_SCOPES;
  expect(scopes).toEqual({
    keyword: [SCOPES.keyword],
    property: [SCOPES.field],
    method: [SCOPES.verb],
    operator: [SCOPES.operator],
    // The editor is sent words only, and of quantities those are units.
    number: [SCOPES.unit],
    variable: [material],
    class: [piece],
    struct: [surface],
    namespace: [shop],
    function: [recipe],
    event: [job],
    // These the grammar does not know.
    enumMember: ["support.constant.finish"],
    type: ["support.type.finish"],
    parameter: ["variable.parameter.finish"],
  });
  expect(SCOPES.duty).toMatch(/^support\.constant\./);
  const unscoped = TOKEN_TYPES.filter((type) => !Object.hasOwn(scopes, type));
  expect(unscoped).toEqual(["string", "comment"]);
});

test("the VS Code that it asks for is the one that it is typed against, and the client's own minimum", () => {
  const minimum = (range: string): string => range.replace(/^\^/, "");
  const packageOf = (name: string) => JSON.parse(readText(`node_modules/${name}/package.json`));
  const types: string = packageOf("@types/vscode").version;
  const client: string = packageOf("vscode-languageclient").engines.vscode;
  expect(minimum(manifest.engines.vscode)).toBe(types);
  expect(minimum(manifest.engines.vscode)).toBe(minimum(client));
});

/** These wake the extension; the others are about a recipe that is open, or about the server. */
const WITHOUT_A_RECIPE = [
  "finishwright.newRecipe",
  "finishwright.openSamples",
  "finishwright.openLanguage",
  "finishwright.explainFinding",
  "finishwright.findRecipes",
  "finishwright.showChanges",
];

test("commands have a category, settings a scope, a default and a description", () => {
  for (const command of manifest.contributes.commands) {
    expect(command.category).toBe("Finishwright");
    expect(command.enablement).toBe(
      WITHOUT_A_RECIPE.includes(command.command) ? undefined : "finishwright.active",
    );
  }
  const settings: Record<string, Record<string, unknown>> = manifest.contributes.configuration.properties;
  for (const [name, setting] of Object.entries(settings)) {
    expect(name).toMatch(/^finishwright\./);
    expect(setting).toMatchObject({ scope: expect.any(String), default: expect.anything() });
    expect(setting.description ?? setting.markdownDescription).toEqual(expect.any(String));
  }
});

test("commands that need a recipe are offered in the command palette beside one only", () => {
  const declared: readonly { readonly command: string }[] = manifest.contributes.commands;
  const offered: readonly { readonly command: string; readonly when: string }[] =
    manifest.contributes.menus.commandPalette;
  const reports = declared.filter(({ command }) => /\.(?:show(?!Output|Changes)|save)/.test(command));
  const ofTree = ["finishwright.goToFirstFinding", "finishwright.refreshWorkshop"];
  expect(offered).toEqual([
    ...reports.map(({ command }) => ({ command, when: "editorLangId == finish" })),
    ...ofTree.map((command) => ({ command, when: "false" })),
  ]);
});

const texts: Readonly<Record<string, string>> = JSON.parse(readText("package.nls.json"));

/** Every text of a part of the manifest under one of these names. */
const FIELDS_WITH_TEXT =
  /^(?:title|shortTitle|label|description|markdownDescription|displayName|altText|contents)$/;
const textsIn = (part: unknown, name = ""): readonly string[] => {
  // Grammars and problem matchers have names that nobody reads; those of views are texts.
  if (typeof part === "string")
    return FIELDS_WITH_TEXT.test(name) || (name === "name" && part.startsWith("%")) ? [part] : [];
  if (Array.isArray(part) && /[dD]escriptions$/.test(name)) return part;
  if (typeof part !== "object" || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) => textsIn(value, Array.isArray(part) ? name : key));
};

test("every text of the manifest stands in package.nls.json, and nothing else does", () => {
  const { displayName, description, contributes, capabilities } = manifest;
  const shown = textsIn({ displayName, description, contributes, capabilities });
  const [alias] = contributes.languages[0].aliases;
  // The title of the settings is the name of the extension.
  const keys = [alias, ...shown].filter((text) => text !== "Finishwright").map((text) => text.slice(1, -1));
  for (const text of [alias, ...shown]) expect(text).toMatch(/^(?:%[\w.]+%|Finishwright)$/);
  expect(keys.toSorted()).toEqual(Object.keys(texts).toSorted());
  for (const [key, text] of Object.entries(texts)) expect(text.trim(), key).not.toBe("");
});

test("each step of the walkthrough is done by the command that it offers", () => {
  const commands = manifest.contributes.commands.map(({ command }: { command: string }) => command);
  const walkthroughs: readonly Walkthrough[] = manifest.contributes.walkthroughs;
  for (const { steps } of walkthroughs) {
    for (const { description, completionEvents, media } of steps) {
      const [command] = completionEvents.map((event) => event.replace("onCommand:", ""));
      expect(commands).toContain(command);
      expect(texts[description.slice(1, -1)]).toContain(`](command:${command})`);
      // Colours are the theme's.
      if (media.svg !== undefined)
        expect(readText(media.svg)).not.toMatch(/(?:fill|stroke)="(?!none|var\(--vscode-)/);
      else expect(readText(media.markdown ?? "")).toMatch(/^## /);
    }
  }
});

test("what menus and walkthroughs call is a command of the extension", () => {
  const commands = manifest.contributes.commands.map(({ command }: { command: string }) => command);
  const menus: Readonly<Record<string, readonly { readonly command: string }[]>> = manifest.contributes.menus;
  for (const { command } of Object.values(menus).flat()) expect(commands).toContain(command);
});

test("the problem matcher reads what the command line writes, and does not say twice what is open", () => {
  const [matcher] = manifest.contributes.problemMatchers;
  expect(matcher).toMatchObject({ name: "finishwright", applyTo: "closedDocuments" });
  // Its owner is not the language server, whose findings a task must not clear away.
  expect(matcher.owner).not.toBe("finishwright");
  const finding = (severity: Severity, message: string) => ({
    rule: "grit-jump",
    severity,
    file: "a",
    span: { start: 13, end: 15 },
    ...textOf(message),
    message,
    related: [],
    fixes: [],
  });
  const report = {
    files: [
      {
        label: "stock: old/a.finish",
        text: "recipe r {\n  step sand\n}\n",
        findings: [finding("error", "One: two [x]\nWhy.\nDo this."), finding("hint", "Four")],
      },
    ],
    other: () => ({ label: "", text: "" }),
  };
  const { regexp, file, line, column, severity, message, code } = matcher.pattern;
  const read = findingsLines(report)
    .split("\n")
    .slice(0, -1)
    .map((text) => {
      const match = new RegExp(regexp).exec(text) ?? [];
      return [file, line, column, severity, message, code].map((group) => match[group]);
    });
  expect(read).toEqual([
    ["stock: old/a.finish", "2", "3", "error", "One: two [x]", "grit-jump"],
    ["stock: old/a.finish", "2", "3", "hint", "Four", "grit-jump"],
  ]);
});

test.each(BUNDLES.filter(({ runsIn }) => runsIn === "node").map(({ out }) => out))(
  "%s needs nothing from outside",
  (out) => {
    const file = path.join(ROOT, out);
    expect(existsSync(file), "run `npm run build` first").toBe(true);
    const required = [...readFileSync(file, "utf8").matchAll(/\brequire\("([^"./][^"]*)"\)/g)].map(
      ([, id]) => id,
    );
    const foreign = required.filter((id) => !process.getBuiltinModule(id ?? "") && id !== "vscode");
    expect([...new Set(foreign)]).toEqual([]);
  },
);
