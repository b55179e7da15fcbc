/** The paths of `use` lines as links. One to a file that is not there is kept: an editor offers to make the file. */
import { t } from "../../../grammar/src/translate.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { UseLinkInfo } from "./types.ts";

export function useLinksOf(program: Program, file: FileId): readonly UseLinkInfo[] {
  const found = program.files.get(file);
  return (found?.uses ?? []).flatMap(({ path, place, target }) => {
    const tree = found?.byKey.get(place.declaration)?.tree;
    if (!tree || path === "") return [];
    const { start, end } = absoluteSpan(tree, place.span);
    const isClosed = end - start > 2 && found.tree.text[end - 1] === '"';
    const reason = program.absent.get(target);
    const tooltip = reason === undefined ? t`Open ${path}` : t`${path} cannot be used: ${reason}`;
    return [{ span: { start: start + 1, end: isClosed ? end - 1 : end }, target, tooltip }];
  });
}
