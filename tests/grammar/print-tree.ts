/**
 * A compact readable print of a tree, for looking at what the parser made of a text.
 * One node a line, with its name in the parent, its kind, what it says, and its span relative to the declaration.
 */
import type { DeclarationBody, Span } from "../../grammar/src/tree.ts";

/** Prints the typed view of a declaration, and its problems. */
export function printBody(body: DeclarationBody): string {
  const problems = body.problems.map((problem) => `! ${printProblem(problem)}`);
  return [printValue("", body.syntax), ...problems].join("\n");
}

function printProblem(problem: { readonly message: string; readonly span: Span }): string {
  return `${printSpan(problem.span)} ${problem.message}`;
}

function printValue(label: string, value: unknown): string {
  if (Array.isArray(value)) {
    return value.map((item, idx) => printValue(`${label}[${idx}]`, item)).join("\n");
  }
  if (!isRecord(value)) {
    return `${label}: ${JSON.stringify(value)}`;
  }
  const head = [label === "" ? "" : `${label}:`, ...headOf(value)].filter((part) => part !== "").join(" ");
  const children = Object.entries(value)
    .filter(([key, child]) => !OWN_KEYS.has(key) && child !== undefined && !(key === "docs" && child === ""))
    .filter(([, child]) => !Array.isArray(child) || child.length > 0)
    .toSorted(([a], [b]) => Number(EVERY.has(b)) - Number(EVERY.has(a)))
    .map(([key, child]) => indent(printValue(key, child)));
  return isLeaf(value) ? head : [head, ...children].join("\n");
}

/** What every statement has, whatever else its line says. */
const EVERY = new Set(["keyword", "docs"]);

/** Keys that the first line of a node already shows. */
const OWN_KEYS = new Set(["kind", "form", "span", "headSpan"]);

function headOf(node: Readonly<Record<string, unknown>>): string[] {
  const said = "value" in node && node.kind !== "field" ? node.value : node.text;
  return [
    String(node.kind ?? node.form ?? "part"),
    isLeaf(node) ? JSON.stringify(said) : "",
    isSpan(node.span) ? printSpan(node.span) : "",
  ];
}

function isLeaf(node: Readonly<Record<string, unknown>>): boolean {
  return ["name", "title", "number", "date", "time"].includes(String(node.kind));
}

function printSpan(span: Span): string {
  return `${span.start}-${span.end}`;
}

function indent(text: string): string {
  return text.replace(/^/gmu, "  ");
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}

function isSpan(value: unknown): value is Span {
  return isRecord(value) && typeof value.start === "number";
}
