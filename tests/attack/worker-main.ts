/** The other end of `worker.ts`: runs the attack that it was started for on every input that it is sent. */
import process from "node:process";
import { ATTACKS } from "./attacks.ts";
import { crash, type Flaw } from "./flaws.ts";

const attack = ATTACKS[process.argv[2] ?? ""];
if (!attack) throw new Error(`There is no attack ${process.argv[2]}.`);

// Accidents outside of any call belong to the input that is being tried.
let stray: Flaw[] = [];
process.on("uncaughtException", (error) => stray.push(crash("outside of any call", error)));
process.on("unhandledRejection", (error) => stray.push(crash("outside of any call", error)));
process.on("disconnect", () => process.exit());

process.on("message", async ({ input }: { readonly input: unknown }) => {
  stray = [];
  const flaws = await attack.check(input).catch((error) => [crash("the check", error)]);
  process.send?.([...flaws, ...stray]);
});
process.send?.("ready");
