/** The commands of the first hour, with an editor that answers as it is told: New Recipe, Open the Samples, no recipe. */
import { beforeEach, describe, expect, test, vi } from "vitest";

/** What the person picks or types, in turn, and what was shown. */
const person = vi.hoisted(() => ({
  answers: [] as unknown[],
  asked: [] as { readonly title?: string; readonly items: readonly string[] }[],
  opened: [] as unknown[],
  messages: [] as string[],
  commands: new Map<string, (...args: unknown[]) => unknown>(),
  folders: undefined as undefined | readonly { readonly uri: { readonly path: string } }[],
  files: new Map<string, string>(),
}));

vi.mock("vscode", async () => {
  const { l10n } = await import("../harness/l10n.ts");
  const uri = (path: string) => ({ path, toString: () => path });
  const answer = async (): Promise<unknown> => person.answers.shift();
  return {
    l10n,
    QuickPickItemKind: { Separator: -1 },
    FileType: { Unknown: 0, File: 1 },
    Uri: { joinPath: (base: { path: string }, ...parts: string[]) => uri([base.path, ...parts].join("/")) },
    commands: {
      registerCommand: (name: string, run: (...args: unknown[]) => unknown) => {
        person.commands.set(name, run);
        return { dispose: () => {} };
      },
      executeCommand: async (name: string) => void person.opened.push(name),
    },
    window: {
      async showQuickPick(
        items: readonly { readonly label: string }[],
        { title }: { readonly title: string },
      ) {
        person.asked.push({ title, items: items.map(({ label }) => label) });
        const label = await answer();
        return items.find((item) => item.label === label);
      },
      async showInputBox({
        title,
        value,
        validateInput,
      }: {
        readonly title: string;
        readonly value: string;
        readonly validateInput: (text: string) => string | undefined;
      }) {
        person.asked.push({ title, items: [value, String(validateInput("long"))] });
        return answer();
      },
      async showInformationMessage(text: string, ...ways: string[]) {
        person.messages.push([text, ...ways].join(" | "));
        return answer();
      },
      async showErrorMessage(text: string) {
        person.messages.push(text);
      },
      showOpenDialog: answer,
      async showTextDocument(document: unknown) {
        person.opened.push(document);
      },
    },
    workspace: {
      get workspaceFolders() {
        return person.folders;
      },
      openTextDocument: async (what: { readonly content?: string; readonly path?: string }) =>
        what.content ?? what.path,
      fs: {
        async readFile({ path }: { readonly path: string }) {
          return new TextEncoder().encode(`sample ${path}`);
        },
        async writeFile({ path }: { readonly path: string }, bytes: Uint8Array) {
          if (path.startsWith("/locked")) throw new Error("no permission");
          person.files.set(path, new TextDecoder().decode(bytes));
        },
        async stat({ path }: { readonly path: string }) {
          if (!person.files.has(path)) throw new Error("missing");
          return { type: 1 };
        },
      },
    },
  };
});

const { registerNewRecipe } = await import("../../client/src/new-recipe.ts");
const { registerOpenSamples } = await import("../../client/src/open-samples.ts");
const { offerRecipe } = await import("../../client/src/offer-recipe.ts");
const { SAMPLE_NAMES } = await import("../../client/src/place-samples.ts");
const { starterText } = await import("../../server/src/starter/starter-text.ts");
const { TEMPLATES } = await import("../../server/src/starter/templates.ts");

beforeEach(() => {
  Object.assign(person, { answers: [], asked: [], opened: [], messages: [], folders: undefined });
  person.files.clear();
  // A Friday, so that the work begins on Monday.
  registerNewRecipe(() => new Date(2027, 2, 5, 21, 30));
  registerOpenSamples({ extensionUri: { path: "/extension" } } as never);
});

const run = async (command: string, answers: readonly unknown[], ...args: unknown[]): Promise<void> => {
  person.answers.push(...answers);
  await person.commands.get(`finishwright.${command}`)?.(...args);
};

const BENCH = { piece: "bench", wood: "teak", now: "bare", look: "outdoors", place: "garage" } as const;
const ANSWERS = ["Bench or stool", "60 x 16 x 18 in", "Teak", "Nothing", "For outdoors", "A garage or shed"];

describe("New Recipe", () => {
  test("asks five things, and opens a recipe in the units of the person", async () => {
    await run("newRecipe", ANSWERS);
    expect(person.opened).toEqual([
      starterText({ ...BENCH, size: [60, 16, 18], units: "inches" }, "2027-03-08"),
    ]);
    expect(person.asked.map(({ title }) => title)).toEqual([
      "New Recipe (1 of 5): What piece is it?",
      "New Recipe (1 of 5): How large is it?",
      "New Recipe (2 of 5): What is it made of?",
      "New Recipe (3 of 5): What is on it now?",
      "New Recipe (4 of 5): What should it look like, and bear?",
      "New Recipe (5 of 5): Where is the work done?",
    ]);
    // A size that cannot be read is answered while it is typed.
    expect(person.asked[1]!.items[1]).toContain("Write length x depth x height");
  });

  test("offers only what is possible", async () => {
    await run("newRecipe", ["Table or desk", "1 x 1 x 1 m", "MDF", "Paint"]);
    expect(person.asked.at(-1)!.items).toEqual(["Painted"]);
    expect(person.opened).toEqual([]);
  });

  test.each([0, 1, 2, 3, 4, 5])("opens nothing where the person leaves after %i answers", async (count) => {
    await run("newRecipe", ANSWERS.slice(0, count));
    expect(person.opened).toEqual([]);
  });

  test.each(TEMPLATES)("opens $label without more questions", async ({ label, answers }) => {
    await run("newRecipe", [label]);
    expect(person.asked).toHaveLength(1);
    const written = (["metric", "inches"] as const).map((units) =>
      starterText({ ...answers, units }, "2027-03-08"),
    );
    expect(written).toContain(person.opened[0]);
  });

  test("takes answers from a caller, and asks where they do not go together", async () => {
    await run("newRecipe", [], { ...BENCH, units: "metric" });
    expect(person.opened).toEqual([starterText({ ...BENCH, units: "metric" }, "2027-03-08")]);
    await run("newRecipe", [], { ...BENCH, wood: "laminate", units: "metric" });
    expect(person.opened).toHaveLength(1);
    expect(person.asked).toHaveLength(1);
  });
});

describe("Open the Samples", () => {
  test("copies them into the open folder and opens one", async () => {
    person.folders = [{ uri: { path: "/mill" } }];
    await run("openSamples", []);
    expect([...person.files.keys()]).toEqual(
      SAMPLE_NAMES.map((name) => `/mill/finishwright-samples/${name}`),
    );
    expect(person.files.get("/mill/finishwright-samples/stock.finish")).toBe(
      "sample /extension/samples/stock.finish",
    );
    expect(person.opened).toEqual(["/mill/finishwright-samples/reading-tables.finish"]);
  });

  test("asks for a folder where none is open, and does nothing without one", async () => {
    await run("openSamples", [[{ path: "/desk" }]]);
    expect(person.opened).toEqual(["/desk/finishwright-samples/reading-tables.finish"]);
    await run("openSamples", [undefined]);
    expect(person.opened).toHaveLength(1);
  });

  test("says why they could not be written", async () => {
    person.folders = [{ uri: { path: "/locked" } }];
    await run("openSamples", []);
    expect(person.opened).toEqual([]);
    expect(person.messages).toEqual([
      "The samples could not be put into /locked/finishwright-samples: no permission. Open a folder that can be written to, and try again.",
    ]);
  });
});

test("where no recipe is open, the ways to one are offered", async () => {
  person.answers.push("Open the Samples");
  await offerRecipe("the schedule is made of it.");
  expect(person.messages).toEqual([
    "Open a finish recipe first: the schedule is made of it. | New Recipe | Open the Samples",
  ]);
  expect(person.opened).toEqual(["finishwright.openSamples"]);
  await offerRecipe("the schedule is made of it.");
  expect(person.opened).toHaveLength(1);
});
