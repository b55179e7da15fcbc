/**
 * Colours of materials as the text gives them: a number such as `#2b3a42`, or words.
 *
 * A colour is light or dark only where that is certain: by the lightness of its number (CIE L*, 0 black to 100 white),
 * or by a colour word that leaves no doubt. Everything else, an unstated colour above all, is neither.
 */
import type { Material } from "./model/model.ts";

/** From this lightness on, what yellows or bleeds through shows; common practice, no source. */
export const LIGHT_FROM = 70;
/** Up to this lightness a milky haze shows; common practice, no source. */
export const DARK_UP_TO = 40;

const LIGHT_WORDS: readonly string[] = ["white", "ivory", "cream"];
const DARK_WORDS: readonly string[] = ["black", "ebony", "charcoal", "anthracite", "navy", "dark"];

export type Shade = "light" | "middle" | "dark";

/** Of sRGB, each from 0 to 1. */
export interface ColourChannels {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** The channels of a colour number of three or six hexadecimal digits; undefined for words. */
export function colourChannels(colour: string): ColourChannels | undefined {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(colour.trim())?.[1];
  if (digits === undefined) return undefined;
  const long = digits.length === 3 ? digits.replace(/./g, "$&$&") : digits;
  const [red, green, blue] = [0, 2, 4].map((at) => Number.parseInt(long.slice(at, at + 2), 16) / 255);
  return { red: red!, green: green!, blue: blue! };
}

/** CIE lightness of a colour number of three or six hexadecimal digits; undefined for words. */
export function lightnessOf(colour: string): number | undefined {
  const channels = colourChannels(colour);
  if (channels === undefined) return undefined;
  const { red, green, blue } = channels;
  const luminance = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  return luminance > 216 / 24389 ? 116 * Math.cbrt(luminance) - 16 : (luminance * 24389) / 27;
}

/** Whether a colour is light or dark; undefined where that is not known. */
export function shadeOf(colour: string | undefined): Shade | undefined {
  if (colour === undefined) return undefined;
  const lightness = lightnessOf(colour);
  if (lightness !== undefined) {
    return lightness >= LIGHT_FROM ? "light" : lightness <= DARK_UP_TO ? "dark" : "middle";
  }
  const words = colour.toLowerCase().match(/\p{L}+/gu) ?? [];
  const light = words.some((word) => LIGHT_WORDS.includes(word));
  const dark = words.some((word) => DARK_WORDS.includes(word));
  return light === dark ? undefined : light ? "light" : "dark";
}

export const shadeOfMaterial = (material: Material | undefined): Shade | undefined =>
  shadeOf(material?.colour?.value);

/** Takes the gamma of sRGB (IEC 61966-2-1) out of one channel, 0 to 1. */
const linear = (channel: number): number =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
