/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * Brings what is on the page to what it is to be with as little change as can be: an element stays the same element, so
 * focus, scrolling, open details and what the mouse is on stay as they are, and nothing flickers.
 */

/** Makes the content of an element that of `html`. Elements with a `data-key`, which is unique in it, are kept by it. */
export function patch(element: Element, html: string): void {
  const template = document.createElement("template");
  template.innerHTML = html;
  patchChildren(element, template.content);
}

const keyOf = (node: Node): string | null => (node instanceof Element ? node.getAttribute("data-key") : null);

function patchChildren(old: ParentNode & Node, wanted: ParentNode & Node): void {
  const children = [...wanted.childNodes];
  const wantedKeys = new Set(children.map(keyOf));
  const keyed = new Map<string, ChildNode>();
  for (const child of [...old.childNodes]) {
    const key = keyOf(child);
    if (key === null) continue;
    if (wantedKeys.has(key)) keyed.set(key, child);
    else child.remove();
  }
  let at: ChildNode | null = old.firstChild;
  for (const child of children) {
    const key = keyOf(child);
    const found: ChildNode | null = key === null ? at : (keyed.get(key) ?? null);
    if (found === null || !isSameSort(found, child)) {
      old.insertBefore(child, at);
      continue;
    }
    // What is in its place is not moved, as moving takes the focus away.
    if (found === at) at = at.nextSibling;
    else old.insertBefore(found, at);
    update(found, child);
  }
  while (at !== null) {
    const next: ChildNode | null = at.nextSibling;
    at.remove();
    at = next;
  }
}

const isSameSort = (a: Node, b: Node): boolean => a.nodeName === b.nodeName && keyOf(a) === keyOf(b);

function update(old: ChildNode, wanted: ChildNode): void {
  if (old.isEqualNode(wanted)) return;
  if (!(old instanceof Element) || !(wanted instanceof Element)) {
    old.nodeValue = wanted.nodeValue;
    return;
  }
  for (const { name } of [...old.attributes]) {
    // Whoever opened it wants it open.
    if (!wanted.hasAttribute(name) && name !== "open") old.removeAttribute(name);
  }
  for (const { name, value } of wanted.attributes) {
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
  if (old instanceof HTMLInputElement) old.checked = wanted.hasAttribute("checked");
  patchChildren(old, wanted);
  if (old instanceof HTMLSelectElement && wanted instanceof HTMLSelectElement) old.value = wanted.value;
}
