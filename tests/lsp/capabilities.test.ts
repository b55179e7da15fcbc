/** What is declared is answered, and what is answered is declared. */
import { expect, test } from "vitest";
import { methodsOf } from "../../server/src/lsp/capabilities.ts";
import { HANDLERS } from "../../server/src/lsp/handlers.ts";
import { MINIMAL, startClient } from "./harness.ts";

const METHOD_NOT_FOUND = -32601;

test("every capability has its handlers, and every handler its capability", async () => {
  const client = await startClient();
  expect([...methodsOf(client.initialized.capabilities)].sort()).toEqual(
    HANDLERS.map(({ method }) => method).sort(),
  );
  await client.end();
});

test("the encoding of positions and the whole declaration, for a rich client", async () => {
  const client = await startClient();
  expect(client.initialized).toMatchObject({
    serverInfo: { name: "Finishwright" },
    capabilities: {
      positionEncoding: "utf-16",
      textDocumentSync: { openClose: true, change: 2 },
      diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true },
    },
  });
  await client.end();
});

test("what a plain client was not promised is not answered", async () => {
  const client = await startClient({ capabilities: MINIMAL });
  const { capabilities } = client.initialized;
  expect(capabilities.diagnosticProvider).toBeUndefined();
  expect(capabilities.codeActionProvider).toBeUndefined();
  for (const { method } of HANDLERS) {
    if (methodsOf(capabilities).includes(method)) continue;
    await expect(client.request(method, {}), method).rejects.toMatchObject({ code: METHOD_NOT_FOUND });
  }
  await client.end();
});
