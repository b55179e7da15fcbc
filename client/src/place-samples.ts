/** Puts the samples where they can be changed, and leaves alone what is there. */

/** Where they go, below a folder of the person's. */
export const SAMPLES_FOLDER = "finishwright-samples";

export const SAMPLE_NAMES = [
  "first-page.finish",
  "stock.finish",
  "recipes.finish",
  "shop.finish",
  "reading-tables.finish",
  "chairs.finish",
  "childrens-table.finish",
  "card-catalogue.finish",
  "mistakes.finish",
] as const;

/** `read` from the package; `write` and `isThere` in the person's folder. */
export interface SampleFiles {
  read(name: string): PromiseLike<Uint8Array>;
  write(name: string, bytes: Uint8Array): PromiseLike<void>;
  isThere(name: string): PromiseLike<boolean>;
}

/** How many files were written, or why not all could be. */
export async function placeSamples(
  files: SampleFiles,
): Promise<{ readonly written: number } | { readonly failed: string }> {
  try {
    let written = 0;
    for (const name of SAMPLE_NAMES) {
      if (await files.isThere(name)) continue;
      await files.write(name, await files.read(name));
      written += 1;
    }
    return { written };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}
