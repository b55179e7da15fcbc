/** Reads profiles of V8's sampling profiler: who has had the processor, by part of the project and by function. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { z } from "zod";

/** What Node writes with `--cpu-prof`; times are microseconds of a clock that never goes back. */
const Profile = z.object({
  nodes: z.array(
    z.object({
      id: z.number(),
      callFrame: z.object({ functionName: z.string(), url: z.string(), lineNumber: z.number() }),
    }),
  ),
  startTime: z.number(),
  samples: z.array(z.number()),
  timeDeltas: z.array(z.number()),
});

/** A stretch in which one function was seen at work. */
export interface Sample {
  readonly name: string;
  /** URL of the script, empty for V8 itself, and line from 0. */
  readonly url: string;
  readonly line: number;
  readonly us: number;
}

/** The samples of a profile within a span in which something was at work. Throws a ZodError for what is no profile. */
export function ofThread(
  profile: unknown,
  { from, to }: { readonly from: number; readonly to: number },
): readonly Sample[] {
  const { nodes, samples, timeDeltas, startTime } = Profile.parse(profile);
  const byId = new Map(nodes.map(({ id, callFrame }) => [id, callFrame]));
  let at = startTime;
  return samples.flatMap((id, i) => {
    const us = timeDeltas[i] ?? 0;
    at += us;
    const frame = byId.get(id);
    if (frame === undefined || frame.functionName === "(idle)" || at < from || at > to) return [];
    return [{ name: frame.functionName, url: frame.url, line: frame.lineNumber, us }];
  });
}

export interface Share {
  readonly name: string;
  /** 0 to 1. */
  readonly share: number;
}

/** Shares of the time, greatest first: by part of the project, and by function. */
export function byPart(samples: readonly Sample[]): {
  readonly parts: readonly Share[];
  readonly functions: readonly Share[];
  readonly ms: number;
} {
  const all = samples.reduce((sum, { us }) => sum + us, 0);
  const sharesBy = (nameOf: (sample: Sample) => string): readonly Share[] => {
    const sums = new Map<string, number>();
    for (const sample of samples) {
      const name = nameOf(sample);
      sums.set(name, (sums.get(name) ?? 0) + sample.us);
    }
    return [...sums].map(([name, us]) => ({ name, share: us / all })).toSorted((a, b) => b.share - a.share);
  };
  const places = placesIn(new Map());
  return {
    parts: sharesBy((sample) => partName(sample, places)),
    functions: sharesBy((sample) => {
      const place = places(sample);
      return place === "" ? sample.name || "(no name)" : `${sample.name || "(no name)"} in ${place}`;
    }),
    ms: all / 1000,
  };
}

/** `grammar/src`, `server/src/core/rules`, `packages`, `Node`, `(garbage collector)` */
function partName(sample: Sample, placeOf: (sample: Sample) => string): string {
  const place = placeOf(sample);
  if (place === "") return sample.name.startsWith("(") ? sample.name : "V8";
  if (place.startsWith("node:")) return "Node";
  if (place.startsWith("node_modules/")) return "packages";
  const depth = place.startsWith("server/src/core/") ? 4 : 3;
  return place.split("/").slice(0, -1).slice(0, depth).join("/");
}

/** In which source file a sample stands: bundles say where each of their modules begins. */
function placesIn(bundles: Map<string, readonly string[]>): (sample: Sample) => string {
  return ({ url, line }) => {
    if (!url.startsWith("file://")) return url;
    const file = fileURLToPath(url);
    const isBundle = file.endsWith(".cjs");
    if (!isBundle) return file.slice(Math.max(0, file.search(/(?:grammar|server|node_modules|tests)\//u)));
    const modules = bundles.get(file) ?? modulesByLine(file);
    bundles.set(file, modules);
    return modules[line] ?? file;
  };
}

/** esbuild puts `// server/src/core/…` before each module of a bundle that is not minified. */
function modulesByLine(bundle: string): readonly string[] {
  if (!existsSync(bundle)) return [];
  let module = "start of the bundle";
  return readFileSync(bundle, "utf8")
    .split("\n")
    .map((text) => {
      const found = /^\/\/ ((?:grammar|server|client|node_modules)\/\S+)$/u.exec(text)?.[1];
      if (found !== undefined) module = found;
      return module;
    });
}
