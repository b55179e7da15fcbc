/** The watch over a server in a browser: what it calls busy, what it calls silent, and what neither. */
import { expect, test } from "vitest";
import { createSilenceWatch } from "../../client/src/silence-watch.ts";

function watched() {
  const said: string[] = [];
  const watch = createSilenceWatch({
    busyTicks: 2,
    hangTicks: 4,
    onBusy: (methods) => said.push(`busy ${methods.join(" ")}`),
    onHang: (methods) => said.push(`hang ${methods.join(" ")}`),
  });
  const ticks = (count: number): void => {
    for (let tick = 0; tick < count; tick += 1) watch.tick();
  };
  return { watch, ticks, said };
}

test("a request without a word is named, and then given up once", () => {
  const { watch, ticks, said } = watched();
  watch.sent({ jsonrpc: "2.0", id: 7, method: "textDocument/hover" });
  ticks(9);
  expect(said).toEqual(["busy textDocument/hover", "hang textDocument/hover"]);
});

test("nothing asked is nothing owed, and notifications ask nothing", () => {
  const { watch, ticks, said } = watched();
  watch.sent({ jsonrpc: "2.0", method: "textDocument/didChange" });
  ticks(9);
  expect(said).toEqual([]);
});

test("an answer closes its request, and any message is a sign of life", () => {
  const { watch, ticks, said } = watched();
  watch.sent({ id: "a", method: "textDocument/hover" });
  ticks(1);
  watch.received({ id: "a", result: null });
  ticks(9);
  watch.sent({ id: 1, method: "textDocument/diagnostic" });
  ticks(1);
  // A request of the server's own with the same id is no answer.
  watch.received({ id: 1, method: "workspace/configuration" });
  ticks(3);
  expect(said).toEqual(["busy textDocument/diagnostic"]);
  ticks(1);
  expect(said).toEqual(["busy textDocument/diagnostic", "hang textDocument/diagnostic"]);
});

test.each([null, 3, "x", [], {}, { id: {} }, { id: null, method: 5 }])("takes %j for what it is", (odd) => {
  const { watch, ticks, said } = watched();
  watch.sent(odd);
  watch.received(odd);
  ticks(9);
  expect(said).toEqual([]);
});
