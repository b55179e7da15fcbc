/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * Puts the rows beside a drawing level with what they name, as far as they have room, and draws a line from each to its
 * place where they have not. How tall a row is only the page knows, so this is done when it is laid out.
 */
import { levelled } from "./levelled.ts";

/** Coats are what the drawing is about; what lies below them can go down. */
const COAT_WEIGHT = 50;

/** Of the field of the lines between drawing and rows, px. */
const FIELD = 24;

export function levelRows(root: ParentNode): void {
  for (const cut of root.querySelectorAll<HTMLElement>(".cut")) {
    const list = cut.querySelector<HTMLElement>("ol")!;
    const drawing = cut.querySelector<HTMLElement>(".drawing")!;
    const leaders = cut.querySelector<SVGElement>("svg.leaders")!;
    const rows = [...list.children].filter((each) => each instanceof HTMLElement);
    const wanted = rows.map(({ dataset, offsetHeight }) => ({
      y: Number(dataset.y),
      height: offsetHeight,
      weight: dataset.coat === undefined ? 1 : COAT_WEIGHT,
    }));
    const { tops, shift, height } = levelled(
      wanted,
      drawing.firstElementChild!.getBoundingClientRect().height,
    );
    for (const [i, row] of rows.entries()) put(row, "top", `${tops[i]!}px`);
    put(list, "height", `${height}px`);
    put(drawing, "marginTop", `${shift}px`);
    const lines = rows.flatMap((row, i) => {
      if (row.dataset.gone !== undefined) return [];
      const from = wanted[i]!.y + shift;
      const to = tops[i]! + wanted[i]!.height / 2;
      return [`M0 ${from}h4L${FIELD - 6} ${to}h6`];
    });
    set(leaders, "height", String(height));
    set(leaders, "viewBox", `0 0 ${FIELD} ${height}`);
    set(leaders.firstElementChild!, "d", lines.join(""));
  }
}

/** What is as it was is left alone. */
function put({ style }: HTMLElement, name: "top" | "height" | "marginTop", value: string): void {
  if (style[name] !== value) style[name] = value;
}

const set = (element: Element, name: string, value: string): void => {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
};
