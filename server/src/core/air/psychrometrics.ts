/**
 * Damp air: saturation pressure of water vapour, how much more the air can take up, and the dew point.
 *
 * e(T) = 0.61094 · exp(17.625 T / (T + 243.04)) kPa: the Magnus form with the constants of O. A. Alduchov and
 * R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure, J. Appl. Meteor. 35 (1996); within
 * 0.4 % of the tables from −40 to 50 C, which is all that a workshop can be. Temperatures in C, humidity in percent.
 */

const A = 17.625;
const B = 243.04;
const E0_KPA = 0.61094;

/** Where the constants were fitted; outside, temperatures are taken at the end of the range. */
const COLDEST_C = -40;
const HOTTEST_C = 100;

/** Saturation pressure of water vapour over water, kPa. */
export function saturationPressureKPa(temperatureC: number): number {
  const t = inRange(temperatureC);
  return E0_KPA * Math.exp((A * t) / (t + B));
}

/** What the air lacks to saturation, kPa: the pull on the water of a wet film. Humidity 0 to 100 %. */
export function vapourPressureDeficitKPa(temperatureC: number, humidityPercent: number): number {
  const humidity = Math.min(Math.max(humidityPercent, 0), 100);
  return saturationPressureKPa(temperatureC) * (1 - humidity / 100);
}

/** Temperature at which the air's moisture condenses, C. Humidity above 0 %, to 100 %; dry air has no dew point. */
export function dewPointC(temperatureC: number, humidityPercent: number): number {
  const humidity = Math.min(humidityPercent, 100);
  if (humidity <= 0) return Number.NEGATIVE_INFINITY;
  const t = inRange(temperatureC);
  const gamma = Math.log(humidity / 100) + (A * t) / (B + t);
  return (B * gamma) / (A - gamma);
}

const inRange = (temperatureC: number): number => Math.min(Math.max(temperatureC, COLDEST_C), HOTTEST_C);
