/** *Record as done now* among the code actions of a job: the client's command gets the line of the record without its time. */
import { expect, test } from "vitest";
import type { CodeAction, CodeLens } from "vscode-languageserver";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { RecordTarget } from "../../server/src/lsp/custom-requests.ts";
import { FILES } from "../cli/bench.ts";
import { startClient } from "./harness.ts";

const URI = "file:///shop/job.finish";
const TEXT = FILES["job.finish"];
const disk = new Map([
  [URI, TEXT],
  ["file:///shop/stock.finish", FILES["stock.finish"]],
]);
const JOB_LINE = TEXT.split("\n").findIndex((line) => line.startsWith("job "));

async function actionsIn(commands: readonly string[]): Promise<readonly CodeAction[]> {
  const client = await startClient({
    capabilities: {
      textDocument: {
        diagnostic: {},
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
      },
    },
    initializationOptions: { commands },
    disk,
    host: { createAnalyst },
  });
  await client.open(URI, TEXT);
  const at = { line: JOB_LINE, character: 0 };
  const actions = await client.request<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: URI },
    range: { start: at, end: at },
    context: { diagnostics: [] },
  });
  await client.end();
  return actions;
}

test("the client gets the place and the line, and puts the time of its clock between them", async () => {
  const done = (await actionsIn(["finishwright.recordDone"])).filter(({ title }) =>
    title.startsWith("Record as done now"),
  );
  expect(done.map(({ title }) => title)).toEqual(["Record as done now: dust on board"]);
  expect(done[0]?.command?.command).toBe("finishwright.recordDone");
  const target: RecordTarget = done[0]!.command!.arguments![0];
  expect(target).toEqual({
    uri: URI,
    version: expect.any(Number),
    // Above the last brace of the text.
    at: { line: TEXT.trimEnd().split("\n").length - 1, character: 0 },
    before: "  done     ",
    after: " dust on board\n",
  });
});

test("a client without a clock for it is offered none", async () => {
  expect((await actionsIn([])).filter(({ title }) => title.startsWith("Record as done now"))).toEqual([]);
});

test("the same stands over the job as a lens, for a client that has the clock for it", async () => {
  const lensesWith = async (commands: readonly string[]): Promise<readonly CodeLens[]> => {
    const client = await startClient({
      initializationOptions: { commands },
      disk,
      host: { createAnalyst },
    });
    await client.open(URI, TEXT);
    const lenses = await client.request<CodeLens[]>("textDocument/codeLens", { textDocument: { uri: URI } });
    await client.end();
    return lenses;
  };
  const [lens, ...others] = (await lensesWith(["finishwright.recordDone"])).filter(
    ({ command }) => command?.command === "finishwright.recordDone",
  );
  expect(others).toEqual([]);
  expect(lens?.range.start.line).toBe(JOB_LINE);
  expect(lens?.command?.title).toBe("Record as done now: dust on board");
  expect(lens?.command?.arguments?.[0]).toMatchObject({
    uri: URI,
    before: "  done     ",
    after: " dust on board\n",
  });
  const without = await lensesWith(["finishwright.showSchedule"]);
  expect(without.filter(({ command }) => command?.title.startsWith("Record as done now"))).toEqual([]);
});
