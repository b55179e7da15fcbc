/**
 * Units as print has them, `m²`, `µm` and `°C`, in texts for people that have them as they are typed. Only behind a figure,
 * so that no name becomes another.
 */
export const printedUnits = (text: string): string =>
  text.replace(BEHIND_FIGURE, (_, space: string, before: string, unit: string) => {
    const sign = SIGNS[unit];
    return `${space}${before}${sign}`;
  });

const SIGNS: Readonly<Record<string, string>> = {
  um: "µm",
  m2: "m²",
  m3: "m³",
  ft2: "ft²",
  C: "°C",
  F: "°F",
};

/** `145 m3`, `350 mg/m3`, `10 m2/L`, `18 C` */
const BEHIND_FIGURE = /(?<=\d)([ \u00a0])((?:(?:mg|g|min|mL)\/)?)(um|m2|m3|ft2|C|F)(?![\p{L}\p{N}])/gu;
