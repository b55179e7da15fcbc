/**
 * *New Recipe*: five questions or a classic way, and a recipe that is sound and complete but for the figures of one's
 * own, as a file that is not saved yet. The texts are those of `finishwright new`.
 */
import {
  commands,
  type Disposable,
  l10n,
  type QuickPickItem,
  QuickPickItemKind,
  window,
  workspace,
} from "vscode";
import {
  type Answers,
  areAnswers,
  type Choice,
  coatingsOn,
  looksOf,
  PIECES,
  PLACES,
  WOODS,
} from "../../server/src/starter/answers.ts";
import { readSize, sizeExample, sizeText } from "../../server/src/starter/size-text.ts";
import { nextOpenDay, starterText } from "../../server/src/starter/starter-text.ts";
import { TEMPLATES } from "../../server/src/starter/templates.ts";

/**
 * A caller that knows the answers, such as a task or a test, hands them over, and nothing is asked. The work begins on the next
 * working day, so that every step has its date.
 */
export const registerNewRecipe = (now = () => new Date()): Disposable =>
  commands.registerCommand("finishwright.newRecipe", async (known?: unknown) => {
    const answers = areAnswers(known) ? known : await askAnswers();
    if (answers === undefined) return;
    const content = starterText(answers, nextOpenDay(localDay(now())));
    const document = await workspace.openTextDocument({ language: "finish", content });
    await window.showTextDocument(document);
  });

/** `2027-03-08`, where the person is. */
const localDay = (now: Date): string =>
  [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, "0"))
    .join("-");

interface Item<Word extends string> extends QuickPickItem {
  readonly word?: Word;
  readonly answers?: Answers;
}

const QUESTIONS = 5;

/** Undefined where the person leaves one of the questions. */
const askAnswers = async (): Promise<Answers | undefined> => {
  const first = await askPiece();
  if (first === undefined || "answers" in first) return first?.answers;
  const { piece } = first;
  const read = await askSize(piece);
  if (read === undefined) return undefined;
  const wood = await ask(2, l10n.t("What is it made of?"), WOODS);
  if (wood === undefined) return undefined;
  const now = await ask(3, l10n.t("What is on it now?"), coatingsOn(wood));
  if (now === undefined) return undefined;
  const look = await ask(4, l10n.t("What should it look like, and bear?"), looksOf(wood, now));
  if (look === undefined) return undefined;
  const place = await ask(5, l10n.t("Where is the work done?"), PLACES);
  return place && { piece, ...read, wood, now, look, place };
};

const askPiece = async (): Promise<
  { readonly piece: Answers["piece"] } | { readonly answers: Answers } | undefined
> => {
  const items: readonly Item<Answers["piece"]>[] = [
    ...itemsOf(PIECES),
    { label: l10n.t("or a classic way, without questions"), kind: QuickPickItemKind.Separator },
    ...TEMPLATES.map(({ label, detail, answers }) => ({
      label: l10n.t(label),
      description: l10n.t(detail),
      answers: { ...answers, units: usualUnits() },
    })),
  ];
  const picked = await pick(1, l10n.t("What piece is it?"), items);
  if (picked?.answers) return { answers: picked.answers };
  return picked?.word && { piece: picked.word };
};

const askSize = async (piece: Answers["piece"]): Promise<Pick<Answers, "size" | "units"> | undefined> => {
  const text = await window.showInputBox({
    title: titleOf(1, l10n.t("How large is it?")),
    prompt: sizeExample(piece),
    value: sizeText(piece, usualUnits()),
    ignoreFocusOut: true,
    validateInput: (typed) => {
      const read = readSize(typed, piece);
      return "problem" in read ? read.problem : undefined;
    },
  });
  if (text === undefined) return undefined;
  const read = readSize(text, piece);
  return "problem" in read ? undefined : read;
};

const ask = async <Word extends string>(
  number: number,
  question: string,
  list: readonly Choice<Word>[],
): Promise<Word | undefined> => (await pick(number, question, itemsOf(list)))?.word;

const pick = <Word extends string>(
  number: number,
  question: string,
  items: readonly Item<Word>[],
): Thenable<Item<Word> | undefined> =>
  window.showQuickPick(items, {
    title: titleOf(number, question),
    placeHolder: question,
    matchOnDescription: true,
    ignoreFocusOut: true,
  });

const titleOf = (number: number, question: string): string =>
  l10n.t("New Recipe ({0} of {1}): {2}", number, QUESTIONS, question);

const itemsOf = <Word extends string>(list: readonly Choice<Word>[]): readonly Item<Word>[] =>
  list.map(({ word, label, detail }) => ({ word, label: l10n.t(label), description: l10n.t(detail) }));

/** Countries where furniture is measured in inches. */
const WITH_INCHES: ReadonlySet<string> = new Set(["US", "LR", "MM"]);

/** What is proposed first; the units in which a size is typed count. */
const usualUnits = (): Answers["units"] => {
  const { locale } = new Intl.DateTimeFormat().resolvedOptions();
  return WITH_INCHES.has(new Intl.Locale(locale).region ?? "") ? "inches" : "metric";
};
