/** What moisture wood comes to in air of a given temperature and humidity. */

/** Where the equation stands for the printed table it was fitted to. */
export const AIR_LIMITS = {
  temperatureC: { from: -1, to: 130 },
  humidityPercent: { from: 0, to: 95 },
} as const;

/**
 * Moisture content that wood settles at, percent of its dry weight. Kinds of wood differ by a point or so around it.
 *
 * @param temperatureC air temperature, °C, −1 to 130
 * @param humidityPercent relative humidity, 0 to 95 %
 * @throws RangeError outside these ranges
 *
 * Source: Forest Products Laboratory, Wood Handbook, FPL–GTR–190 (2010), equation 4–5: the sorption model of A. J.
 * Hailwood and S. Horrobin, Trans. Faraday Soc. 42B (1946) 84–92, with two hydrates.
 */
export function equilibriumMoisturePercent(temperatureC: number, humidityPercent: number): number {
  requireWithin('Temperature', temperatureC, AIR_LIMITS.temperatureC, '°C');
  requireWithin('Relative humidity', humidityPercent, AIR_LIMITS.humidityPercent, '%');
  const t = temperatureC;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = (k * humidityPercent) / 100;
  const first = k1 * kh;
  const second = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}

function requireWithin(what: string, value: number, { from, to }: { from: number; to: number }, unit: string): void {
  if (value >= from && value <= to) return;
  throw new RangeError(`${what} ${value} ${unit} is not between ${from} and ${to} ${unit}. Give one in that range.`);
}
