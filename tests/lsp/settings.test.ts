/** Settings: what they do, what becomes of wrong ones, and that VS Code offers exactly those that the server reads. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { DEFAULT_SETTINGS, readSettings, SETTING_SCHEMAS, valuesOf } from "../../server/src/lsp/settings.ts";
import { FILES } from "../cli/bench.ts";
import { MINIMAL, startClient } from "./harness.ts";

const A = "file:///shop/a.finish";

test("findings below the lowest level wanted are not shown, as soon as the user says so", async () => {
  const client = await startClient();
  await client.open(A, "bad dull");
  expect(await client.findings(A)).toHaveLength(2);
  client.setSettings({ findings: { lowest: "warning" } });
  await client.notify("workspace/didChangeConfiguration", { settings: null });
  await client.take("workspace/diagnostic/refresh");
  expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
  await client.end();
});

test("a level wanted is heeded though the project's configuration is looked up again meanwhile, and slowly", async () => {
  const looked: (() => void)[] = [];
  let isSlow = false;
  const client = await startClient({
    openFolders: ["file:///shop"],
    host: {
      readFromDisk: async () => {
        if (isSlow) await new Promise<void>((resolve) => looked.push(resolve));
        return { reason: "it does not exist" };
      },
    },
  });
  await client.open(A, "bad dull");
  expect(await client.findings(A)).toHaveLength(2);
  isSlow = true;
  client.setSettings({ findings: { lowest: "warning" } });
  await client.notify("workspace/didChangeConfiguration", { settings: null });
  // No configuration comes of it, so nothing but the setting has changed.
  await expect.poll(() => looked.length).toBeGreaterThan(0);
  isSlow = false;
  for (const answer of looked) answer();
  await client.take("workspace/diagnostic/refresh");
  expect(await client.findings(A)).toEqual(["0:0-0:3 bad-word: This is bad."]);
  await client.end();
});

test("a client that cannot be asked sends its settings along", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  await client.open(A, "bad dull");
  expect((await client.pushed()).diagnostics).toHaveLength(2);
  await client.notify("workspace/didChangeConfiguration", {
    settings: { finishwright: { findings: { lowest: "error" } } },
  });
  expect((await client.pushed()).diagnostics).toEqual([]);
  await client.end();
});

test("a wrong value is named, and the default stands in", async () => {
  const client = await startClient({ settings: { findings: { lowest: "loud" } } });
  expect(await client.take("window/logMessage")).toEqual({
    type: 2,
    message:
      'The setting finishwright.findings.lowest is "loud", but takes one of: error, warning, information, hint.',
  });
  await client.open(A, "dull");
  expect(await client.findings(A)).toHaveLength(1);
  await client.end();
});

test.each([[null], [undefined], [7], [[]], [{ findings: null }], [{ findings: { lowest: null } }]])(
  "%j is no settings at all",
  (section) => {
    expect(readSettings(section)).toEqual({ settings: DEFAULT_SETTINGS, complaints: [] });
  },
);

test("package.json declares the settings that the server reads, with the same values", () => {
  const { contributes } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  const declared: Record<string, { type: string; enum?: string[]; default: unknown }> =
    contributes.configuration.properties;
  const values = Object.entries(declared).map(([name, { type, enum: words }]) => [
    name,
    words ?? (type === "boolean" ? [true, false] : []),
  ]);
  expect(Object.fromEntries(values)).toEqual(
    Object.fromEntries(Object.keys(SETTING_SCHEMAS).map((name) => [name, valuesOf(name as never)])),
  );
  // What VS Code gives where the user says nothing is what the server does where it is told nothing.
  const section: Record<string, Record<string, unknown>> = {};
  for (const [name, { default: value }] of Object.entries(declared)) {
    const [, group = "", key = ""] = name.split(".");
    section[group] = { ...section[group], [key]: value };
  }
  expect(readSettings(section)).toEqual({ settings: DEFAULT_SETTINGS, complaints: [] });
});

test("each kind of hint and the lenses have a switch of their own, and only a yes or no will do", () => {
  const { settings, complaints } = readSettings({
    inlayHints: { litres: false, waits: "no" },
    codeLens: { jobs: false },
  });
  expect(settings).toEqual({ ...DEFAULT_SETTINGS, inlayHints: ["waits", "elapsed"], jobLenses: false });
  expect(complaints).toEqual([
    'The setting finishwright.inlayHints.waits is "no", but takes one of: true, false.',
  ]);
});

test("plans go on from the day of the setting, and from the last record again where there is none", async () => {
  const text = FILES["stock.finish"] + FILES["job.finish"].replace('use "stock.finish"\n', "  ");
  const client = await startClient({
    capabilities: { textDocument: { diagnostic: {} }, workspace: { configuration: true } },
    host: { createAnalyst },
  });
  await client.open(A, text);
  const lastWork = async (): Promise<string | undefined> => {
    const totals = await client.request<string>("finishwright/report", {
      kind: "totals",
      textDocument: { uri: A },
    });
    return /last work +(.*? \d\d:\d\d)/u.exec(totals)?.[1];
  };
  const set = async (today: string): Promise<void> => {
    client.setSettings({ plan: { today } });
    await client.notify("workspace/didChangeConfiguration", { settings: null });
  };
  // Begun at 09:00, the last coat ends at 12:00: tests/cli/bench.ts. The day is a Wednesday.
  expect(await lastWork()).toBe("Mon 8 Mar 2027 12:00");
  await set("2027-03-10");
  await expect.poll(lastWork).toBe("Wed 10 Mar 2027 12:00");
  await set(" ");
  await expect.poll(lastWork).toBe("Mon 8 Mar 2027 12:00");
});

test("a day that is none is named, and plans go on as without it", () => {
  for (const today of ["2027-02-30", "tomorrow", "2027-03-10T25:00"])
    expect(readSettings({ plan: { today } })).toEqual({
      settings: DEFAULT_SETTINGS,
      complaints: [
        `The setting finishwright.plan.today is "${today}", but takes a day, such as 2027-03-10 or 2027-03-10T14:00.`,
      ],
    });
  expect(readSettings({ plan: { today: "2027-03-10 14:00" } }).settings.today).toBe("2027-03-10T14:00");
});
