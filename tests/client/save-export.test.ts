/** Saving a care card or a short recipe asks what it must, tells nothing more than was picked, and writes only then. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { copySheet, registerSaveExports, type Saved, saveExport } from "../../client/src/save-export.ts";
import { BENCH, type BenchAnswer } from "../../server/src/lsp/custom-requests.ts";

/** An editor with one recipe and a caret in its third line. */
const editor = vi.hoisted(() => {
  const uriOf = (path: string) => ({ path, scheme: "file", toString: () => `file://${path}` });
  const document = { languageId: "finish", uri: uriOf("/shop/tables.finish") };
  return {
    document,
    uriOf,
    commands: new Map<string, (given?: unknown) => Promise<void>>(),
    /** What the person answers, in turn; undefined closes the question. */
    picks: [] as unknown[],
    asked: [] as { readonly items: readonly { readonly label: string }[]; readonly options: unknown }[],
    target: undefined as unknown,
    suggested: "",
    written: [] as { readonly path: string; readonly text: string }[],
    opened: [] as string[],
    shown: [] as string[],
    told: [] as string[],
    copied: [] as string[],
    /** Fails where it is set. */
    failing: undefined as "write" | "open" | "copy" | undefined,
  };
});

vi.mock("vscode", async () => {
  const { l10n } = await import("../harness/l10n.ts");
  const tell = async (text: string): Promise<void> => {
    editor.told.push(text);
  };
  const open = { document: editor.document, selection: { active: { line: 2 } } };
  return {
    l10n,
    commands: {
      registerCommand: (name: string, run: (given?: unknown) => Promise<void>) => {
        editor.commands.set(name, run);
        return { dispose() {} };
      },
    },
    Disposable: { from: () => ({ dispose() {} }) },
    env: {
      openExternal: async ({ path }: { path: string }) => {
        if (editor.failing === "open") return false;
        editor.opened.push(path);
        return true;
      },
      clipboard: {
        writeText: async (text: string) => {
          if (editor.failing === "copy") throw new Error("no clipboard here");
          editor.copied.push(text);
        },
      },
    },
    ProgressLocation: { Window: 10 },
    Uri: {
      joinPath: ({ path }: { readonly path: string }, ...way: readonly string[]) =>
        editor.uriOf(way[0] === ".." ? `/shop/${way[1]}` : `${path}/${way[0]}`),
    },
    window: {
      visibleTextEditors: [open],
      activeTextEditor: open,
      showQuickPick: async (items: readonly { readonly label: string }[], options: unknown) => {
        editor.asked.push({ items, options });
        const pick = editor.picks.shift();
        return typeof pick === "function" ? pick(items) : pick;
      },
      showSaveDialog: async ({ defaultUri }: { defaultUri: { path: string } }) => {
        editor.suggested = defaultUri.path;
        return editor.target;
      },
      showTextDocument: async ({ path }: { path: string }) => editor.shown.push(path),
      showWarningMessage: tell,
      showInformationMessage: tell,
      showErrorMessage: tell,
      withProgress: (_: unknown, work: () => unknown) => work(),
    },
    workspace: {
      textDocuments: [editor.document],
      workspaceFolders: [{ uri: editor.uriOf("/open") }],
      fs: {
        writeFile: async ({ path }: { path: string }, bytes: Uint8Array) => {
          if (editor.failing === "write") throw new Error("the disk is full");
          editor.written.push({ path, text: new TextDecoder().decode(bytes) });
        },
      },
    },
  };
});

const clientWith = (answers: Readonly<Record<string, unknown>>) => {
  const sent: { readonly method: string; readonly params: object }[] = [];
  const client = {
    code2ProtocolConverter: { asUri: String },
    protocol2CodeConverter: { asUri: (uri: string) => editor.uriOf(new URL(uri).pathname) },
    sendRequest: async (method: string, params: object) => {
      sent.push({ method, params });
      return answers[method === BENCH ? "bench" : "export"] ?? null;
    },
  };
  return { client: client as unknown as BaseLanguageClient, sent };
};

const saved = (as: Saved["as"]): Saved => ({ uri: editor.document.uri as never, job: "six_chairs", as });
const labelled =
  (...labels: readonly string[]) =>
  (items: readonly { readonly label: string }[]) =>
    items.filter(({ label }) => labels.includes(label));

beforeEach(() => {
  Object.assign(editor, { target: editor.uriOf("/away/card.html"), suggested: "", failing: undefined });
  const { picks, asked, written, opened, shown, told, copied } = editor;
  for (const list of [picks, asked, written, opened, shown, told, copied]) list.length = 0;
});

describe("a care card", () => {
  test("tells nothing that is kept back unless it is ticked, and is opened where it was saved", async () => {
    const { client, sent } = clientWith({ export: "the card" });
    editor.picks.push([]);
    await saveExport(client, saved("care"));
    expect(sent[0]!.params).toEqual({
      textDocument: { uri: "file:///shop/tables.finish" },
      job: "six_chairs",
      as: "care",
    });
    expect(editor.asked[0]).toMatchObject({ options: { canPickMany: true } });
    expect(editor.asked[0]!.items.map(({ label }) => label)).toEqual([
      "owner",
      "people",
      "prices",
      "delivery",
      "photos",
    ]);
    expect(editor.asked[0]!.items.filter((item) => "picked" in item)).toEqual([]);
    expect(editor.suggested).toBe("/shop/six_chairs-care-card.html");
    expect(editor.written).toEqual([{ path: "/away/card.html", text: "the card" }]);
    expect(editor.opened).toEqual(["/away/card.html"]);
  });

  test("of a recipe that is not saved yet goes into the open folder", async () => {
    const { client } = clientWith({ export: "the card" });
    editor.picks.push([]);
    const uri = { path: "Untitled-1", scheme: "untitled" };
    await saveExport(client, { ...saved("care"), uri: uri as never });
    expect(editor.suggested).toBe("/open/six_chairs-care-card.html");
  });

  test("tells what is ticked", async () => {
    const { client, sent } = clientWith({ export: "the card" });
    editor.picks.push(labelled("owner", "photos"));
    await saveExport(client, saved("care"));
    expect(sent[0]!.params).toMatchObject({ with: ["owner", "photos"] });
  });

  test("is not asked for where the question is closed, and not written where no place is given", async () => {
    const { client, sent } = clientWith({ export: "the card" });
    editor.picks.push(undefined);
    await saveExport(client, saved("care"));
    expect(sent).toEqual([]);
    editor.picks.push([]);
    editor.target = undefined;
    await saveExport(client, saved("care"));
    expect(editor.written).toEqual([]);
  });

  test("of a job that is gone is not written, and that is said", async () => {
    const { client } = clientWith({});
    editor.picks.push([]);
    await saveExport(client, saved("care"));
    expect(editor.written).toEqual([]);
    expect(editor.told).toEqual([expect.stringContaining("nothing was saved")]);
  });
});

test("a short recipe is shown as the text that it is; a sheet and a list ask nothing", async () => {
  const { client } = clientWith({ export: "text" });
  editor.picks.push([]);
  await saveExport(client, saved("recipe"));
  expect(editor.suggested).toBe("/shop/six_chairs-recipe.md");
  expect(editor.shown).toEqual(["/away/card.html"]);
  await saveExport(client, saved("csv"));
  await saveExport(client, saved("html"));
  expect(editor.asked).toHaveLength(1);
  expect(editor.opened).toEqual(["/away/card.html"]);
});

describe("each says what it did", () => {
  const { client } = clientWith({ export: "text" });

  test("a sheet: saved and opened, to be printed there", async () => {
    await saveExport(client, saved("html"));
    expect(editor.told).toEqual(["Saved card.html and opened it in the browser: print it from there."]);
  });

  test("a sheet that no browser was opened for, or that lies on another machine", async () => {
    const said = ["Saved card.html. It was not opened from here: open it in a browser to print it."];
    editor.failing = "open";
    await saveExport(client, saved("html"));
    expect(editor.told).toEqual(said);
    editor.told.length = 0;
    editor.target = { ...editor.uriOf("/away/card.html"), scheme: "vscode-vfs" };
    await saveExport(client, saved("html"));
    expect(editor.told).toEqual(said);
    expect(editor.written).toHaveLength(2);
  });

  test.each([
    ["csv", "/shop/six_chairs-shopping.csv", "Any spreadsheet opens it."],
    ["ics", "/shop/six_chairs-calendar.ics", "Import it into your calendar"],
  ] as const)("a list and a calendar: saved, and what it is for (%s)", async (as, suggested, use) => {
    await saveExport(client, saved(as));
    expect(editor.suggested).toBe(suggested);
    expect(editor.told).toEqual([expect.stringMatching(/^Saved card\.html\./)]);
    expect(editor.told[0]).toContain(use);
    expect(editor.opened).toEqual([]);
  });

  test("a copy", async () => {
    await copySheet(client, editor.document.uri as never, "six_chairs");
    expect(editor.copied).toEqual(["text"]);
    expect(editor.told).toEqual([expect.stringContaining("on the clipboard")]);
  });
});

describe("what goes wrong is said, and nothing else is", () => {
  test("writing", async () => {
    editor.failing = "write";
    await saveExport(clientWith({ export: "text" }).client, saved("csv"));
    expect(editor.told).toEqual(["card.html was not saved: the disk is full"]);
  });

  test("copying", async () => {
    editor.failing = "copy";
    await copySheet(clientWith({ export: "text" }).client, editor.document.uri as never, "six_chairs");
    expect(editor.told).toEqual(["The bench sheet was not copied: no clipboard here"]);
  });

  test("the server", async () => {
    const client = {
      code2ProtocolConverter: { asUri: String },
      sendRequest: async () => {
        throw new Error("the server is gone");
      },
    } as unknown as BaseLanguageClient;
    await saveExport(client, saved("html"));
    expect(editor.told).toEqual(["It could not be made: the server is gone"]);
    expect(editor.suggested).toBe("");
  });

  test("a calendar without dates says where the reason is", async () => {
    await saveExport(clientWith({}).client, saved("ics"));
    expect(editor.told).toEqual([expect.stringMatching(/no dates.*line above the job/)]);
    await copySheet(clientWith({}).client, editor.document.uri as never, "six_chairs");
    expect(editor.told[1]).toContain("nothing was copied");
  });
});

describe("the command", () => {
  const jobs = [
    { name: "hall_tables", title: "Tables" },
    { name: "six_chairs", title: "Six chairs" },
  ];
  const bench = { name: "six_chairs" } as BenchAnswer["bench"];
  const run = (name: string, client: BaseLanguageClient, given?: unknown): Promise<void> => {
    registerSaveExports(client);
    return editor.commands.get(`finishwright.${name}`)!(given);
  };

  test("takes the only job without a question", async () => {
    const { client, sent } = clientWith({ bench: { jobs: [jobs[0]], notes: [] }, export: "the card" });
    editor.picks.push([]);
    await run("saveCareCard", client);
    expect(sent.map(({ params }) => params)).toMatchObject([
      { textDocument: { uri: "file:///shop/tables.finish" }, line: 2 },
      { job: "hall_tables", as: "care" },
    ]);
  });

  test("takes the job that the tree names without a question", async () => {
    const { client, sent } = clientWith({ export: "the card" });
    editor.picks.push([]);
    await run("saveCareCard", client, { uri: "file:///shop/chairs.finish", job: "six_chairs", kind: "job" });
    expect(sent.map(({ params }) => params)).toMatchObject([
      { textDocument: { uri: "file:///shop/chairs.finish" }, job: "six_chairs", as: "care" },
    ]);
  });

  test("asks for one of several, that of the caret first", async () => {
    const { client, sent } = clientWith({ bench: { jobs, bench, notes: [] }, export: "the recipe" });
    editor.picks.push((items: readonly unknown[]) => items[0], []);
    await run("saveShortRecipe", client);
    expect(editor.asked[0]!.items.map(({ label }) => label)).toEqual(["Six chairs", "Tables"]);
    expect(sent[1]!.params).toMatchObject({ job: "six_chairs", as: "recipe" });
  });

  test("says what the server says where there is no job", async () => {
    const { client } = clientWith({ bench: { jobs: [], notes: ["It has no job."] } });
    await run("saveCareCard", client);
    expect(editor.told).toEqual(["It has no job."]);
  });
});
