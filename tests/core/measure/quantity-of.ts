/**
 * Builds quantities, ranges and shapes for the tests of the arithmetic, without the parser.
 *
 * `quantityOf("5 ft 6 in")` reads plain decimal numbers and the words after them; spans are those of the text given.
 */
import type { Measure, Name, Quantity, Range, ShapeSyntax, Words } from "../../../grammar/src/tree.ts";

export function quantityOf(text: string, offset = 0): Quantity {
  const parts: Measure[] = [];
  for (const match of text.matchAll(/(-?[\d.]+)\s*([^\d\s-]\S*(?:\s+changes\/h)?)?/gu)) {
    const start = offset + match.index;
    const number = numberOf(match[1]!, start);
    const unit =
      match[2] === undefined
        ? undefined
        : nameOf(match[2], offset + match.index + match[0].indexOf(match[2]));
    parts.push(unit === undefined ? { number } : { number, unit });
  }
  return { kind: "quantity", parts, span: { start: offset, end: offset + text.length } };
}

export function rangeOf(text: string, offset = 0): Range {
  const [from, to] = text.split(" to ");
  const span = { start: offset, end: offset + text.length };
  if (to === undefined) return { kind: "range", from: quantityOf(text, offset), span };
  return {
    kind: "range",
    from: quantityOf(from!, offset),
    to: quantityOf(to, offset + from!.length + " to ".length),
    span,
  };
}

/** `4 of post 75 mm to 50 mm x 700 mm, inside too, plus 10 %` */
export function shapeOf(text: string): ShapeSyntax {
  const span = { start: 0, end: text.length };
  const [head, ...tails] = text.split(", ");
  const [, count, name, rest] = /^(?:(\S+) of )?(\S+) ?(.*)$/u.exec(head!)!;
  const plus = tails.find((tail) => tail.startsWith("plus "));
  const options = tails.filter((tail) => tail !== plus);
  let searched = text.indexOf(rest!, (count === undefined ? 0 : `${count} of `.length) + name!.length);
  const sizes =
    rest === ""
      ? []
      : rest!.split(" x ").map((size) => {
          const start = text.indexOf(size, searched);
          searched = start + size.length;
          return rangeOf(size, start);
        });
  return {
    ...(count === undefined ? {} : { count: numberOf(count, 0) }),
    name: nameOf(name!, count === undefined ? 0 : `${count} of `.length),
    sizes,
    options: options.map((option) => wordsOf(option, text.indexOf(`, ${option}`) + 2)),
    ...(plus === undefined
      ? {}
      : { plus: quantityOf(plus.slice("plus ".length), text.indexOf(plus) + "plus ".length) }),
    span,
  };
}

export function nameOf(text: string, start = 0): Name {
  return { kind: "name", text, span: { start, end: start + text.length } };
}

function wordsOf(text: string, start: number): Words {
  return { kind: "words", words: [nameOf(text, start)], text, span: { start, end: start + text.length } };
}

function numberOf(text: string, start: number): Measure["number"] {
  return { kind: "number", text, value: Number(text), span: { start, end: start + text.length } };
}
