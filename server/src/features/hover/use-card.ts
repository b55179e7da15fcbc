/** What a `use` line brings: the names that its file declares, itself or by what it uses. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { modelsOf, reachableFiles } from "../../core/model/program.ts";
import { bullets, code, firstFew, paragraphs, plain } from "../markdown.ts";
import type { HoverContext } from "./context.ts";
import { fileHead } from "./file-head.ts";

export const KINDS = ["material", "piece", "shop", "recipe", "job"] as const;

export function useCard(ctx: HoverContext, path: string): string {
  const { program } = ctx.checker;
  const target = program.files.get(ctx.file)?.uses.find((use) => use.path === path)?.target;
  const title = `**use** ${plain(path)}`;
  if (target === undefined || !program.files.has(target)) {
    const reason = target === undefined ? undefined : program.absent.get(target);
    return paragraphs(
      title,
      reason ? t`This file cannot be used: ${plain(reason)}.` : t`This file cannot be used.`,
    );
  }
  const models = reachableFiles(program, target).flatMap((id) => {
    const file = program.files.get(id);
    return file ? modelsOf(file) : [];
  });
  return paragraphs(
    title,
    fileHead(program.files.get(target)!.tree.text).map(plain).join("  \n"),
    bullets(
      KINDS.map((kind) => {
        const names = models.filter((model) => model.kind === kind).map(({ name }) => code(name));
        return names.length > 0
          ? `${translated(`${kind}s`)}: ${firstFew(names, (name) => name, 20).join(", ")}`
          : undefined;
      }),
    ),
  );
}
