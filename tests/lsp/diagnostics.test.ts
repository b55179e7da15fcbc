/**
 * Findings in the editor, by either way that a client may want them, through edits, closed files and late ones.
 */

import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  DocumentDiagnosticReport,
  PublishDiagnosticsParams,
  WorkspaceDiagnosticReport,
} from "vscode-languageserver/node";
import type { ReadResult } from "../../server/src/lsp/host.ts";
import { type Client, drawDiagnostic, MINIMAL, startClient } from "./harness.ts";

const A = "file:///shop/a.finish";
const B = "file:///shop/b.finish";

const drawPushed = ({ uri, version, diagnostics }: PublishDiagnosticsParams): unknown => ({
  uri,
  version,
  findings: diagnostics.map(drawDiagnostic),
});

const drawWorkspace = ({ items }: WorkspaceDiagnosticReport): readonly string[] =>
  items.map((item) =>
    item.kind === "full"
      ? `${item.uri}: ${item.items.map(drawDiagnostic).join("; ")}`
      : `${item.uri} unchanged`,
  );

const previous = ({ items }: WorkspaceDiagnosticReport) =>
  items.flatMap(({ uri, resultId }) => (resultId === undefined ? [] : [{ uri, value: resultId }]));

describe("a client that pulls", () => {
  test("gets a finding with everything that it can show", async () => {
    const client = await startClient();
    await client.open(A, "so\nvery bad\n");
    const report = await client.pull(A);
    expect(report).toEqual({
      kind: "full",
      resultId: expect.any(String),
      items: [
        {
          range: { start: { line: 1, character: 5 }, end: { line: 1, character: 8 } },
          severity: 2,
          code: "bad-word",
          codeDescription: { href: "https://example.org/bad-word" },
          source: "finishwright",
          message: "This is bad.",
          relatedInformation: [
            {
              location: {
                uri: A,
                range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
              },
              message: "The text begins here.",
            },
          ],
        },
      ],
    });
    await client.end();
  });

  test("reads names in quotation marks, since findings and titles are plain text", async () => {
    const client = await startClient();
    await client.open(A, "rough");
    const report = await client.pull(A);
    const [shown] = report.kind === "full" ? report.items : [];
    expect(shown?.message).toBe("Write “smooth”, or “even so”, not a lone ` here.");
    expect(shown?.relatedInformation?.map(({ message }) => message)).toEqual(["“rough” begins here."]);
    const actions = await client.request<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri: A },
      range: shown?.range,
      context: { diagnostics: [shown] },
    });
    expect(actions.map(({ title, diagnostics }) => [title, diagnostics])).toEqual([
      ["Write “smooth”", [shown]],
      ["Allow rough-word here, with a reason", [shown]],
    ]);
    await client.end();
  });

  test("gets findings in the order of the text, the gravest of one place first", async () => {
    const client = await startClient();
    await client.open(A, 'dull want oil bad\nuse "b.finish"');
    const report = await client.pull(A);
    expect(report.kind === "full" && report.items.map(({ code }) => code)).toEqual([
      "dull-word",
      "unknown-name",
      "bad-word",
      "use-not-found",
    ]);
    await client.end();
  });

  test("gets all findings of a line at the words of the gravest, if it asks for one mark a line", async () => {
    const client = await startClient({ initializationOptions: { marksLines: true } });
    const text = "rough want oil dull idle\nbad bad";
    await client.open(A, text);
    const report = await client.pull(A);
    const items = report.kind === "full" ? report.items : [];
    // None is lost, and what is faded stays where it is.
    expect(items.map(drawDiagnostic)).toEqual([
      "0:11-0:14 unknown-name: Nothing is called oil.",
      "0:11-0:14 rough-word: Write “smooth”, or “even so”, not a lone ` here.",
      "0:11-0:14 dull-word: This is dull.",
      "0:20-0:24 unused-name: Unused.",
      "1:0-1:3 bad-word: This is bad.",
      "1:0-1:3 bad-word: This is bad.",
    ]);
    const drawn = items.map(({ relatedInformation = [] }) =>
      relatedInformation.map(
        ({ message, location: { range } }) =>
          `${range.start.line}:${range.start.character}-${range.end.character} ${message}`,
      ),
    );
    expect(drawn).toEqual([
      [],
      ["0:0-5 It is about these words.", "0:0-1 “rough” begins here."],
      ["0:15-19 It is about these words."],
      [],
      ["0:0-1 The text begins here."],
      ["1:4-7 It is about these words.", "0:0-1 The text begins here."],
    ]);
    const titlesAt = async (line: number, character: number): Promise<readonly string[]> => {
      const at = { line, character };
      const actions = await client.request<CodeAction[]>("textDocument/codeAction", {
        textDocument: { uri: A },
        range: { start: at, end: at },
        context: { diagnostics: items },
      });
      return actions.flatMap(({ title, diagnostics = [] }) =>
        title.startsWith("Allow")
          ? []
          : [
              `${title} of ${diagnostics.map((each) => items.indexOf(items.find((item) => JSON.stringify(item) === JSON.stringify(each))!)).join()}`,
            ],
      );
    };
    // At the mark and at the words themselves.
    expect(await titlesAt(0, 12)).toEqual(["Write “smooth” of 1"]);
    expect(await titlesAt(0, 2)).toEqual(["Write “smooth” of 1"]);
    expect(await titlesAt(0, 22)).toEqual([]);
    // Two that say the same are of the same mark.
    expect(await titlesAt(1, 5)).toEqual(["Make it good of 4,5"]);
    expect(await titlesAt(1, 1)).toEqual(["Make it good of 4,5", "Make it good of 4,5"]);
    await client.end();
  });

  test("is told in one word that nothing has changed, and gets a new answer when it has", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    const first = await client.pull(A);
    expect(await client.pull(A, first.resultId)).toEqual({ kind: "unchanged", resultId: first.resultId });
    await client.change(A, 2, "bad bad");
    expect((await client.pull(A, first.resultId)).kind).toBe("full");
    await client.change(A, 3, "bad");
    expect((await client.pull(A, first.resultId)).kind).toBe("unchanged");
    await client.end();
  });

  test("waits for a used file instead of being told that its names are unknown", async () => {
    const client = await startClient({ disk: new Map([[B, "name oil"]]) });
    await client.open(A, 'use "b.finish"\nwant oil\nwant wax');
    expect(await client.findings(A)).toEqual(["2:5-2:8 unknown-name: Nothing is called wax."]);
    await client.end();
  });

  test("is told to pull again, if it does not by itself, of a file that it has asked about and then edits unseen", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    await client.open(B, "bad");
    await client.pull(A);
    await client.pull(B);
    // As a rename does over two files, one of them in a hidden tab: only the other is asked about.
    await client.change(A, 2, "good");
    await client.change(B, 2, "good");
    await client.pull(A);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(B)).toEqual([]);
    await client.end();
  });

  test("is told of a file that is opened under the name of one that was closed until it asks", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    expect(await client.findings(A)).toHaveLength(1);
    await client.close(A);
    // Its question about the text before keeps it from asking, and its tab is hidden when it is told for the first time.
    await client.open(A, "so\nbad bad");
    await client.take("workspace/diagnostic/refresh");
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toHaveLength(2);
    await client.end();
  });

  test("is told of it also where the findings are the same, and where it was asked about before it was opened", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    await client.findings(A);
    await client.close(A);
    // What a client that closes a file still asks is answered, and says nothing of the file that is opened next.
    await client.findings(A);
    await client.open(A, "bad");
    await client.take("workspace/diagnostic/refresh");
    await client.findings(A);
    await client.end();
  });

  test("is asked to pull again when a used file appears, changes and goes on disk", async () => {
    const disk = new Map<string, string>();
    const client = await startClient({ disk });
    const watched = (type: 1 | 2 | 3) =>
      client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type }] });
    const missing = [
      '0:4-0:14 use-not-found: "b.finish" cannot be used: there is no such file.',
      "1:5-1:8 unknown-name: Nothing is called oil.",
    ];
    await client.open(A, 'use "b.finish"\nwant oil');
    expect(await client.findings(A)).toEqual(missing);
    disk.set(B, "name oil");
    await watched(1);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    disk.set(B, "name wax");
    await watched(2);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual(missing.slice(1));
    disk.delete(B);
    await watched(3);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual(missing);
    disk.set(B, "name oil");
    await watched(1);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("is asked to pull again when a text changes that it does not show", async () => {
    const client = await startClient({ disk: new Map([[B, "name oil"]]) });
    await client.open(A, 'use "b.finish"\nwant wax');
    await client.open(B, "name oil");
    expect(await client.findings(A)).toEqual(["1:5-1:8 unknown-name: Nothing is called wax."]);
    // Nobody has asked about B: its editor is not in view, so the client will not ask after this edit either.
    await client.change(B, 2, "name wax");
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("sees the open text of a used file, and the disk's again after it was closed unsaved", async () => {
    const client = await startClient({ disk: new Map([[B, "name oil"]]) });
    await client.open(A, 'use "b.finish"\nwant oil');
    await client.open(B, "name wax");
    expect(await client.findings(A)).toEqual(["1:5-1:8 unknown-name: Nothing is called oil."]);
    await client.close(B);
    await client.take("workspace/diagnostic/refresh");
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("gets nothing for a file that was closed and that nothing uses", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    await client.close(A);
    expect(await client.findings(A)).toEqual([]);
    await client.end();
  });

  test("writes one file in different ways and means the same", async () => {
    const client = await startClient({ disk: new Map([["file:///shop/o(1).finish", "name oil"]]) });
    await client.open(
      "file:///shop/a%20b.finish",
      'use "./o(1).finish"\nuse "../shop/o(1).finish"\nwant oil',
    );
    expect(await client.findings("file:///shop/a b.finish")).toEqual([]);
    await client.end();
  });

  test("never has diagnostics pushed to it as well", async () => {
    const client = await startClient();
    await client.open(A, "bad");
    await client.findings(A);
    await client.close(A);
    await client.end();
  });
});

describe("the whole folder", () => {
  test("is reported, opened or not, and then only what is new", async () => {
    const disk = new Map([
      [A, "bad"],
      [B, "good"],
    ]);
    const client = await startClient({ disk, folderFiles: [A, B] });
    const ask = (report?: WorkspaceDiagnosticReport): Promise<WorkspaceDiagnosticReport> =>
      client.request("workspace/diagnostic", {
        identifier: "finishwright",
        previousResultIds: report === undefined ? [] : previous(report),
      });
    let first = await ask();
    while (first.items.length < 2) first = await ask(first);
    expect(drawWorkspace(first)).toEqual([`${A}: 0:0-0:3 bad-word: This is bad.`, `${B}: `]);

    const second = ask(first);
    disk.set(B, "so bad");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type: 2 }] });
    expect(drawWorkspace(await second)).toEqual([`${A} unchanged`, `${B}: 0:3-0:6 bad-word: This is bad.`]);

    const third = ask(await second);
    disk.delete(A);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: A, type: 3 }] });
    expect(drawWorkspace(await third)).toEqual([`${B} unchanged`, `${A}: `]);
    await client.end();
  });

  test("is cleared of a file that was closed and deleted before it was ever reported", async () => {
    const disk = new Map([[A, "bad"]]);
    const client = await startClient({ disk, folderFiles: [] });
    await client.open(A, "bad");
    await client.findings(A);
    await client.close(A);
    disk.delete(A);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: A, type: 3 }] });
    const report = await client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
      previousResultIds: [{ uri: B, value: "of an earlier server" }],
    });
    expect(drawWorkspace(report)).toEqual([`${B}: `, `${A}: `]);
    await client.end();
  });

  /** Asks about all files until it has been told of so many, and then what is new. */
  const knowing = async (client: Client, count: number): Promise<WorkspaceDiagnosticReport> => {
    let known = await client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
      previousResultIds: [],
    });
    while (known.items.length < count)
      known = await client.request("workspace/diagnostic", { previousResultIds: previous(known) });
    return known;
  };
  /** Goes on asking until something is told of `last`; the last word on each file, by its URI. */
  const follow = async (
    client: Client,
    known: WorkspaceDiagnosticReport,
    last: string,
    forgotten?: string,
  ): Promise<Readonly<Record<string, string>>> => {
    const said: Record<string, string> = {};
    const ids = new Map(previous(known).map(({ uri, value }) => [uri, value]));
    if (forgotten !== undefined) ids.delete(forgotten);
    while (said[last] === undefined) {
      const previousResultIds = [...ids].map(([uri, value]) => ({ uri, value }));
      const report = await client.request<WorkspaceDiagnosticReport>("workspace/diagnostic", {
        previousResultIds,
      });
      for (const item of report.items) {
        if (item.resultId === undefined) ids.delete(item.uri);
        else ids.set(item.uri, item.resultId);
        if (item.kind === "full") said[item.uri] = item.items.map(drawDiagnostic).join("; ");
      }
    }
    return said;
  };
  const C = "file:///shop/c.finish";

  test("is cleared of a deleted file although something changes while that is being told", async () => {
    const disk = new Map([
      [A, "bad"],
      [B, "good"],
    ]);
    const client = await startClient({ disk, folderFiles: [B] });
    const known = await knowing(client, 1);
    await client.open(A, "bad");
    await client.findings(A);
    await client.open(B, "good");
    await client.close(A);
    disk.delete(A);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: A, type: 3 }] });
    const told = follow(client, known, B);
    // The server looks at one file after the other, and takes messages in between.
    await client.change(B, 2, "so bad");
    expect(await told).toEqual({ [A]: "", [B]: "0:3-0:6 bad-word: This is bad." });
    await client.end();
  });

  test("is told of a closed file once more after an answer on it that comes late, which the client drops", async () => {
    const disk = new Map([
      [A, 'use "b.finish"\nbad'],
      [C, "good"],
    ]);
    let read: (result: ReadResult) => void = () => {};
    const slow = new Promise<ReadResult>((resolve) => {
      read = resolve;
    });
    let isSlow = false;
    const client = await startClient({
      folderFiles: [A, C],
      host: {
        async readFromDisk(uri) {
          if (uri === B && isSlow) return slow;
          const text = disk.get(uri);
          return text === undefined ? { reason: "there is no such file" } : { text };
        },
      },
    });
    const known = await knowing(client, 2);
    await client.open(A, disk.get(A)!);
    await client.findings(A);
    isSlow = true;
    disk.set(B, "name oil");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type: 1 }] });
    const late = client.pull(A).catch(() => undefined);
    const gone = follow(client, known, A, A);
    await client.close(A);
    disk.delete(A);
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: A, type: 3 }] });
    expect(await gone).toMatchObject({ [A]: "" });
    const again = follow(client, known, C, A);
    read({ text: "name oil" });
    await late;
    disk.set(C, "bad");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: C, type: 2 }] });
    expect(await again).toMatchObject({ [A]: "", [C]: "0:0-0:3 bad-word: This is bad." });
    await client.end();
  });

  test("is told of a file that was closed unsaved, whatever the client was told of it before", async () => {
    const disk = new Map([
      [A, "good"],
      [C, "good"],
    ]);
    const client = await startClient({ disk, folderFiles: [A, C] });
    const known = await knowing(client, 2);
    await client.open(A, "good");
    const told = follow(client, known, C);
    await client.change(A, 2, "bad");
    expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
    await client.close(A);
    disk.set(C, "bad");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: C, type: 2 }] });
    expect(await told).toEqual({ [A]: "", [C]: "0:0-0:3 bad-word: This is bad." });
    await client.end();
  });

  test("takes up a file that is new in it", async () => {
    const disk = new Map<string, string>();
    const client = await startClient({ disk, folderFiles: [] });
    disk.set(B, "bad");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type: 1 }] });
    expect(await client.findings(B)).toEqual(["0:0-0:3 bad-word: This is bad."]);
    await client.end();
  });

  test("takes up a file that is new in it and opened before the news comes", async () => {
    const client = await startClient({ disk: new Map([[B, "bad"]]), folderFiles: [] });
    await client.open(B, "so bad");
    await client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: B, type: 1 }] });
    await client.close(B);
    expect(await client.findings(B)).toEqual(["0:0-0:3 bad-word: This is bad."]);
    await client.end();
  });
});

describe("a client that does not pull", () => {
  test("has findings pushed after every change, once, and cleared when it closes the file", async () => {
    const client = await startClient({ capabilities: MINIMAL });
    await client.open(A, "bad");
    expect(drawPushed(await client.pushed())).toEqual({
      uri: A,
      version: 1,
      findings: ["0:0-0:3 bad-word: This is bad."],
    });
    await client.change(A, 2, "bad is here");
    await client.change(A, 3, "it is bad");
    expect(drawPushed(await client.pushed())).toEqual({
      uri: A,
      version: 3,
      findings: ["0:6-0:9 bad-word: This is bad."],
    });
    await client.close(A);
    expect(drawPushed(await client.pushed())).toEqual({ uri: A, version: undefined, findings: [] });
    await client.end();
  });

  test("learns that a used file has appeared when it saves", async () => {
    const disk = new Map<string, string>();
    const client = await startClient({ capabilities: MINIMAL, disk });
    await client.open(A, 'use "b.finish"\nwant oil');
    expect((await client.pushed()).diagnostics).toHaveLength(2);
    disk.set(B, "name oil");
    await client.notify("textDocument/didSave", { textDocument: { uri: A } });
    expect((await client.pushed()).diagnostics).toEqual([]);
    await client.end();
  });

  test("is not shown what it cannot show", async () => {
    const client = await startClient({ capabilities: MINIMAL });
    await client.open(A, "bad idle");
    const { diagnostics } = await client.pushed();
    expect(diagnostics.map((diagnostic) => Object.keys(diagnostic).sort())).toEqual([
      ["code", "message", "range", "severity", "source"],
      ["code", "message", "range", "severity", "source"],
    ]);
    await client.end();
  });
});

test("text that is not in use fades", async () => {
  const client = await startClient();
  await client.open(A, "idle");
  const report: DocumentDiagnosticReport = await client.pull(A);
  expect(report.kind === "full" && report.items.map(({ tags }) => tags)).toEqual([[1]]);
  await client.end();
});
