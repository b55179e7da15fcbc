/**
 * Pages by their titles, as the tab of an editor names what it shows by the end of its address: `Wrong unit` is the page of the
 * rule `wrong-unit`.
 */

/** `Wrong unit` of `wrong-unit`. */
export const pageTitle = (name: string): string =>
  `${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll("-", " ")}`;

/** And back. */
export const pageNamed = (title: string): string => title.toLowerCase().replaceAll(" ", "-");
