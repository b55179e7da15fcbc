/** Texts are read when somebody asks for what they have a say in: first the one that a person looks at, the others later. */
import { afterEach, expect, test, vi } from "vitest";
import type { Hover } from "vscode-languageserver";
import { planWork } from "../../server/src/core/schedule/plan.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { PlanMaker } from "../../server/src/lsp/planning.ts";
import { OPENING_MS } from "../../server/src/lsp/server.ts";
import { startClient } from "./harness.ts";

const uriOf = (name: string): string => `file:///shop/${name}.finish`;

/** A host that writes down which texts are read, in their order, and how many were when a plan was made. */
function watched() {
  const read: string[] = [];
  const readAtPlans: number[] = [];
  const maker: PlanMaker = {
    async make(input) {
      readAtPlans.push(read.length);
      return planWork(input);
    },
  };
  const host: Parameters<typeof startClient>[0] = {
    capabilities: { textDocument: { diagnostic: {} } },
    host: {
      planMaker: () => maker,
      createAnalyst: (options) => {
        const analyst = createAnalyst(options);
        return {
          ...analyst,
          setFile: (file, ...given) => {
            read.push(file);
            return analyst.setFile(file, ...given);
          },
        };
      },
    },
  };
  return { host, read, readAtPlans };
}

/** Holds the pause in which others may be opened, until it is said to be over. */
function holdOpening(): () => void {
  const held: (() => void)[] = [];
  const real = globalThis.setTimeout;
  const timer = vi
    .spyOn(globalThis, "setTimeout")
    .mockImplementation(((work: () => void, ms: number, ...given: readonly unknown[]) =>
      ms === OPENING_MS ? held.push(work) : real(work, ms, ...given)) as typeof setTimeout);
  return () => {
    timer.mockRestore();
    for (const work of held) work();
  };
}

afterEach(() => {
  vi.restoreAllMocks();
});

const SHOP = `shop mill {
  air   20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
`;

const jobIn = (name: string): string => `use "shop.finish"

recipe coats_${name} {
  for wood
  layer oil_varnish
}

piece table_${name} {
  surface top {
    shape area 2 m2
    wood  beech
  }
}

job order_${name} {
  piece table_${name}
  in    mill
  start 2027-03-08
  apply coats_${name} to top
}
`;

test("of many texts the one that is looked at is read and answered first, and the others without being asked", async () => {
  const { host, read } = watched();
  const client = await startClient(host);
  const endOpening = holdOpening();
  const names = ["a", "b", "c", "d"];
  const opened = names.map((name) => client.open(uriOf(name), `recipe ${name} {\n  step dust\n}\n`));
  const answer = client.pull(uriOf("d"));
  await Promise.all(opened);
  await answer;
  expect(read).toEqual([uriOf("d")]);
  endOpening();
  await expect.poll(() => read.length, { timeout: 10_000 }).toBe(4);
  expect(read.toSorted()).toEqual(names.map(uriOf));
  await client.end();
});

test("a list of the folder's recipes has no opened text read that nobody asks about", async () => {
  const { host, read } = watched();
  let tell: (uris: readonly string[]) => void = () => {};
  const listed = new Promise<readonly string[]>((resolve) => {
    tell = resolve;
  });
  const client = await startClient({
    ...host,
    openFolders: ["file:///shop"],
    host: { ...host.host, listRecipes: () => listed },
  });
  const endOpening = holdOpening();
  const names = ["a", "b", "c"];
  await Promise.all(names.map((name) => client.open(uriOf(name), `recipe ${name} {\n  step dust\n}\n`)));
  // All of them have come in.
  await client.pull(uriOf("c"));
  tell(names.map(uriOf));
  await listed;
  await client.pull(uriOf("c"));
  expect(read).toEqual([uriOf("c")]);
  endOpening();
  await expect.poll(() => read.length, { timeout: 10_000 }).toBe(3);
  await client.end();
});

test("an opened text that another uses is read with it, and not looked for on disk", async () => {
  const { host, read } = watched();
  const client = await startClient(host);
  const endOpening = holdOpening();
  const opened = [
    client.open(uriOf("other"), "recipe other {\n  step dust\n}\n"),
    client.open(uriOf("stock"), "material clear {\n  family oil varnish\n}\n"),
    client.open(uriOf("a"), 'use "stock.finish"\n\nrecipe coats {\n  for wood\n  layer clear\n}\n'),
  ];
  const findings = client.findings(uriOf("a"));
  await Promise.all(opened);
  expect((await findings).filter((line) => /use-not-found|unknown-name/u.test(line))).toEqual([]);
  expect(read).toEqual([uriOf("a"), uriOf("stock")]);
  endOpening();
  await client.end();
});

test("nothing is planned before all texts are read, as their jobs may need the same people", async () => {
  const { host, read, readAtPlans } = watched();
  const client = await startClient(host);
  const opened = [
    client.open(uriOf("shop"), SHOP),
    ...["a", "b", "c"].map((name) => client.open(uriOf(name), jobIn(name))),
  ];
  await Promise.all([...opened, client.pull(uriOf("c"))]);
  await expect.poll(() => readAtPlans.length, { timeout: 10_000 }).toBeGreaterThan(0);
  expect(readAtPlans[0]).toBe(4);
  expect(new Set(read).size).toBe(4);
  await client.end();
});

test("a text that is edited before it is read is answered for as it is now", async () => {
  const { host } = watched();
  const client = await startClient(host);
  const opened = [
    client.open(uriOf("a"), "recipe a {\n  step dust\n}\n"),
    client.open(uriOf("b"), "recipe b {\n  step dust\n}\n"),
    client.change(uriOf("a"), 2, "recipe a {\n  step dusst\n}\n"),
  ];
  const [, findings] = await Promise.all([client.pull(uriOf("b")), client.findings(uriOf("a")), ...opened]);
  expect(findings.join()).toContain("dusst");
  await client.end();
});

test("what is told of a name reaches into texts that nobody has asked about", async () => {
  const { host } = watched();
  const client = await startClient(host);
  const opened = [client.open(uriOf("shop"), SHOP), client.open(uriOf("a"), jobIn("a"))];
  const position = { line: 0, character: 6 };
  const textDocument = { uri: uriOf("shop") };
  const context = { includeDeclaration: false };
  const found = client.request<readonly { uri: string }[]>("textDocument/references", {
    textDocument,
    position,
    context,
  });
  const hover = client.request<Hover | null>("textDocument/hover", { textDocument, position });
  await Promise.all(opened);
  expect((await found).map(({ uri }) => uri)).toEqual([uriOf("a")]);
  expect(await hover).not.toBeNull();
  await client.end();
});
