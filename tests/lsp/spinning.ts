/**
 * A process under the watchdog whose own thread hangs as soon as it has said that it does; started by `watchdog.test.ts`.
 *
 * It takes the id of its client as an argument, or `-` where it has none but its input.
 */
import { writeSync } from "node:fs";
import process from "node:process";
import { startWatchdog } from "../../server/src/entry/watchdog.ts";

const [client = "-", spins = "for ever"] = process.argv.slice(2);
const watchdog = startWatchdog({
  overStdin: true,
  parentIsClient: false,
  onEnd: () => process.exit(7),
  times: { pollMs: 20, graceMs: 200, budgetMs: 100 },
});
if (client !== "-") watchdog.watchClient(Number(client));
let text = "";
watchdog.input?.on("data", (chunk: Buffer) => {
  text += chunk.toString();
  if (!text.includes("go\n")) return;
  const done = watchdog.begin('the check of "a.finish"');
  setImmediate(() => {
    // Said when nothing else can come before, and at once, since the loop would hold it back.
    writeSync(1, "spinning\n");
    const end = spins === "for ever" ? Number.POSITIVE_INFINITY : performance.now() + Number(spins);
    while (performance.now() < end);
    done();
    process.stdout.write("done\n");
  });
});
watchdog.input?.on("end", () => process.exit(5));
