/** Closing very many documents takes what their number asks for: the looks at all files are counted. */
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { createAllowedFolders } from "../../server/src/lsp/allowed-folders.ts";
import { createChanges } from "../../server/src/lsp/changes.ts";
import type { FileReader } from "../../server/src/lsp/file-reader.ts";
import { Files } from "../../server/src/lsp/files.ts";
import { createPlanning, planHere } from "../../server/src/lsp/planning.ts";
import { createProjectConfigs } from "../../server/src/lsp/project-configs.ts";

const uri = (name: string): string => `file:///mill/${name}.finish`;
const reader: FileReader = {
  read: () => Promise.resolve({ text: "material oil {\n  family drying oil\n}\n" }),
  outOfReach: () => undefined,
  readPicture: async () => ({ reason: "does not exist" }),
};

/** Opens and closes so many documents that use one file; what was looked at, and the files that are left. */
async function openAndClose(size: number, text: string) {
  let looks = 0;
  const changes = createChanges();
  const files = new Files({
    host: {
      version: "0",
      rulePage: () => undefined,
      createAnalyst: (options) => {
        const analyst = createAnalyst(options);
        const counting = () => {
          const analysis = analyst.analysis();
          const usedBy = (file: string): readonly string[] => {
            looks += 1;
            return analysis.usedBy(file);
          };
          return Object.create(analysis, { usedBy: { value: usedBy } }) as typeof analysis;
        };
        return { ...analyst, analysis: counting };
      },
    },
    reader,
    changes,
    configs: createProjectConfigs(reader, () => {}),
    allowed: createAllowedFolders(),
    planning: createPlanning({ maker: planHere, onNews: () => {} }),
    log: () => {},
  });
  for (let i = 0; i < size; i += 1) files.open(uri(`f${i}`), 1, text);
  await files.settled();
  looks = 0;
  for (let i = 0; i < size; i += 1) files.close(uri(`f${i}`));
  await files.settled();
  return { looks, left: files.snapshot().analysis.files };
}

test.each([
  ["by themselves", ""],
  ["that use one file", 'use "oil.finish"\n'],
])("documents %s", async (_, text) => {
  const few = await openAndClose(500, text);
  const many = await openAndClose(2000, text);
  // An eighth of the files is closed between two looks at all of them: about eight looks a file; their square is two million.
  expect(many.looks - few.looks).toBeLessThan(12 * 2000);
  expect([...few.left, ...many.left]).toEqual([]);
});
