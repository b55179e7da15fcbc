/**
 * The extension on a machine and in a browser are the same but for how the server is started. A browser can load one file
 * alone, so that has all of it, and hands out what the other takes from it. On a machine nothing of browsers is run.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Plugin } from "esbuild";

const ROOT = path.resolve(import.meta.dirname, "..");
const WHOLE = "?whole";
const FOR_BROWSERS = "client/src/extension-web.ts";

/** What the extension on a machine imports of it, from the project's folder. */
const HELD: readonly string[] = [
  "client/src/run-extension.ts",
  "node_modules/vscode-jsonrpc/lib/common/api.js",
  "node_modules/vscode-languageserver-protocol/lib/common/api.js",
  "node_modules/vscode-languageclient/lib/common/api.js",
  "node_modules/vscode-languageclient/lib/common/client.js",
  "node_modules/vscode-languageclient/lib/common/utils/is.js",
];

const nameOf = (file: string): string => path.relative(ROOT, file).split(path.sep).join("/");

/** For the browser: the extension itself is run when it is activated, so that what is taken from here runs nothing else. */
export const heldForMachine: Plugin = {
  name: "held-for-machine",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /extension-web\.ts\?whole$/ }, () => ({
      path: path.join(ROOT, FOR_BROWSERS),
      suffix: WHOLE,
    }));
    onLoad({ filter: /[\\/]client[\\/]src[\\/]extension-web\.ts$/ }, ({ suffix }) => {
      if (suffix === WHOLE) return undefined;
      const whole = `require("./extension-web.ts${WHOLE}")`;
      const held = HELD.map((name) => {
        const file = JSON.stringify(path.join(ROOT, name));
        return `${JSON.stringify(name)}: () => require(${file})`;
      });
      const contents = [
        `export const activate = (context) => ${whole}.activate(context);`,
        `export const deactivate = () => ${whole}.deactivate();`,
        `const HELD = { ${held.join(", ")} };`,
        "export const held = (name) => HELD[name]();",
      ];
      return { contents: contents.join("\n"), loader: "js" };
    });
  },
};

export const takenFromWeb: Plugin = {
  name: "taken-from-web",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^\.\/extension-web\.cjs$/ }, ({ path: name }) => ({ path: name, external: true }));
    onLoad({ filter: /[\\/](?:run-extension\.ts|lib[\\/]common[\\/].*\.js)$/ }, ({ path: file }) => {
      const name = nameOf(file);
      if (!HELD.includes(name)) return undefined;
      const held = `require("./extension-web.cjs").held(${JSON.stringify(name)})`;
      if (!file.endsWith(".ts")) return { contents: `module.exports = ${held};`, loader: "js" };
      const names = [...readFileSync(file, "utf8").matchAll(/^export (?:const|function) (\w+)/gmu)];
      const exported = names.map(([, each]) => `export const ${each} = held.${each};`);
      return { contents: [`const held = ${held};`, ...exported].join("\n"), loader: "js" };
    });
  },
};
