/**
 * `finishwright/changed`, a request of our own: what changed in meaning since an earlier state of a folder, as Markdown.
 *
 * The client says what was different then. Only what that can reach is read once more, beside the texts of now, and planned
 * under names of its own, so that plans of then and of now do not take each other's place.
 */
import type { CancellationToken } from "vscode-languageserver";
import { t } from "../../../../grammar/src/translate.ts";
import type { FileId } from "../../core/place.ts";
import type { Planner } from "../../core/schedule/plan-cache.ts";
import type { Analysis, Analyst } from "../../features/types.ts";
import { changesMarkdown } from "../../reports/changes-markdown.ts";
import { changesBetween } from "../../views/changes/changes.ts";
import type { FilesState } from "../../views/changes/model.ts";
import type { ChangedParams } from "../custom-requests.ts";
import { throwIfCancelled, yieldToMessages } from "../guard.ts";
import { createResolve } from "../packages.ts";
import type { Session } from "../session.ts";
import { fileIdOf, fileNameOf } from "../uri.ts";

export const changed = async (
  session: Session,
  params: ChangedParams,
  token: CancellationToken,
): Promise<string> => {
  const { changes, files, planning } = session;
  await files.complete();
  const texts = new Map(params.before.map(({ uri, text }) => [fileIdOf(uri), text]));
  const renames = new Map(params.renamed.map(({ from, to }) => [fileIdOf(from), fileIdOf(to)]));
  const earlier = createEarlier(session);
  try {
    const reached = await readEarlier(earlier, files.snapshot().analysis, texts, token);
    for (;;) {
      throwIfCancelled(token);
      const { generation } = changes;
      earlier.plansChanged();
      const [then, now] = [earlier.analysis(), files.snapshot().analysis];
      const inFolder = (file: FileId): boolean => isBelow(params.folder, file);
      const asked = [...reached].filter(inFolder);
      if (![then, now].some((analysis) => asked.some((file) => analysis.awaitsPlans(file)))) {
        const told = changesBetween(stateOf(then, asked), stateOf(now, asked), renames);
        const untouched = now.files.filter((file) => inFolder(file) && !reached.has(file)).length;
        const label = (file: FileId): string => nameBelow(params.folder, file);
        return changesMarkdown({ ...told, looked: told.looked + untouched }, { before: label, after: label });
      }
      await changes.after(generation, token);
    }
  } finally {
    for (const file of earlier.analysis().files) planning.forget(thenName(file));
  }
};

const stateOf = (analysis: Analysis, asked: readonly FileId[]): FilesState => ({
  analysis,
  asked: asked.filter((file) => analysis.text(file) !== undefined),
  keyOf: (file) => file,
});

/** An analyst for the texts of then; it reads what the analyst of now reads, and asks for its plans as somebody else. */
function createEarlier({ host, allowed, configs, planning, settings, log }: Session): Analyst {
  const { today, units } = settings;
  const plan: Planner = (input, owner) =>
    planning.plan(input, {
      ...owner,
      file: thenName(owner.file),
      ...(owner.alsoFor ? { alsoFor: owner.alsoFor.map(thenName) } : {}),
    });
  return host.createAnalyst({
    resolve: createResolve(host, allowed),
    config: configs.of,
    units: () => units,
    plan,
    ...(today === undefined ? {} : { parts: { today } }),
    onFault: ({ part }) => log(`${part} failed in an earlier state.`),
  });
}

/** No file has this name. */
const thenName = (file: FileId): FileId => `${file}\0then`;

/** All files that a change of these texts can reach, in either state: what they use, what uses that, and so on. */
async function readEarlier(
  earlier: Analyst,
  now: Analysis,
  texts: ReadonlyMap<FileId, string | null>,
  token: CancellationToken,
): Promise<ReadonlySet<FileId>> {
  const reached = new Set<FileId>();
  const beside = neighboursIn(now);
  const open = [...texts.keys()];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    if (reached.has(file)) continue;
    reached.add(file);
    const text = texts.has(file) ? texts.get(file) : now.text(file);
    if (text == null) earlier.setAbsent(file, t`there was no such file`);
    else earlier.setFile(file, text);
    const uses = earlier.analysis().program.files.get(file)?.uses ?? [];
    open.push(...uses.map(({ target }) => target), ...(beside.get(file) ?? []));
    await yieldToMessages();
    throwIfCancelled(token);
  }
  return reached;
}

/** What each file uses and what uses it. */
function neighboursIn({ program }: Analysis): ReadonlyMap<FileId, readonly FileId[]> {
  const beside = new Map<FileId, FileId[]>();
  const join = (a: FileId, b: FileId): void => {
    const known = beside.get(a);
    if (known) known.push(b);
    else beside.set(a, [b]);
  };
  for (const [file, { uses }] of program.files)
    for (const { target } of uses) {
      join(file, target);
      join(target, file);
    }
  return beside;
}

const beginning = (folder: string): string => `${fileIdOf(folder).replace(/\/$/u, "")}/`;

const isBelow = (folder: string, file: FileId): boolean => file.startsWith(beginning(folder));

/** The path from the folder, as people write it. */
const nameBelow = (folder: string, file: FileId): string =>
  isBelow(folder, file)
    ? file.slice(beginning(folder).length).split("/").map(fileNameOf).join("/")
    : fileNameOf(file);
