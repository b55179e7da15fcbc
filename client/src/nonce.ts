/** What the policy of a page lets in its own style and script by: said once, and never again. */
export const nonceOf = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
