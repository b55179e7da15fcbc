/**
 * The extension's manifest and package, as far as they can be tried without an editor.
 *
 * What a user gets must hold what the manifest points at and nothing else, must start only where there is a recipe,
 * and must not say that it runs on an editor that it was not written for. `npm run build` makes the bundles; `npm test`
 * does that first.
 */
import { existsSync, globSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { expect, test } from "vitest";
import { BUNDLES } from "../../client/bundles.ts";
import { NAME_SCOPES, SCOPES } from "../../grammar/src/textmate.ts";
import { TOKEN_TYPES } from "../../server/src/features/types.ts";

const ROOT = path.join(import.meta.dirname, "../..");
const readText = (name: string): string => readFileSync(path.join(ROOT, name), "utf8");
const manifest = JSON.parse(readText("package.json"));

/** Nothing is packaged but what the file list lets in, since it shuts everything out first. */
const [shutOut, ...letIn] = readText(".vscodeignore").trim().split("\n");
const packaged = letIn.flatMap((line) => globSync(line.replace(/^!/, ""), { cwd: ROOT }));

test("the package holds what was chosen, all of it there, and no sources, tests or dependencies", () => {
  expect(shutOut).toBe("**");
  for (const line of letIn) expect(globSync(line.replace(/^!/, ""), { cwd: ROOT }), line).not.toEqual([]);
  const kinds = packaged.filter(
    (name) => !/^(?:client|server)\/(?:dist|docs|media|schemas|syntaxes)\//.test(name),
  );
  expect(kinds.sort()).toEqual(
    ["CHANGELOG.md", "LICENSE", "README.md", "client/language-configuration.json", "package.json"].sort(),
  );
});

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
    ...contributes.jsonValidation.map(({ url }: { url: string }) => url),
  ];
  for (const name of named) expect(packaged).toContain(path.posix.normalize(name));
});

test("it is small enough to download without a thought", () => {
  const sizes = packaged.map((name) => statSync(path.join(ROOT, name)).size);
  // Neither minified nor compressed; the package itself is about a seventh of it.
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(9_000_000);
});

test("it runs wherever VS Code does: in a browser, in virtual folders and in those that nobody trusts", () => {
  expect(manifest.capabilities).toEqual({
    untrustedWorkspaces: { supported: true },
    virtualWorkspaces: true,
  });
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

test("commands have a category, settings a scope, a default and a description", () => {
  for (const command of manifest.contributes.commands) {
    expect(command).toMatchObject({ category: "Finishwright", enablement: "finishwright.active" });
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
  const reports = declared.filter(({ command }) => /\.show(?!Output)/.test(command));
  expect(offered).toEqual(reports.map(({ command }) => ({ command, when: "editorLangId == finish" })));
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
