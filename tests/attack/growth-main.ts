/** The process that `growth.ts` measures in: told a shape and a size, it tells the cost of every part. */
import process from "node:process";
import { SHAPES } from "./growth-shapes.ts";
import { type Cost, measureWork } from "./growth-work.ts";

process.on("disconnect", () => process.exit());
process.on("message", ({ shape, size }: { readonly shape: number; readonly size: number }) => {
  const files = SHAPES[shape]!.files(size);
  measureWork(files, (cost: Cost) => process.send?.(cost));
  process.send?.("done");
});
process.send?.("ready");
