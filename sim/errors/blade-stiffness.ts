/**
 * How far a circular saw blade gives under a sideways force at its rim.
 *
 * Annular Kirchhoff plate clamped at the collar, point load at the rim: k = α(b/a)·E·h³/a² with a the rim and b the
 * collar radius; the rim's slope at the load is β(b/a)·deflection/(a − b). The tables are solutions of the plate
 * equation (ν = 0.3, E = 210 000 N/mm²). A real, tensioned blade is softer than the ideal disc: 60 N/mm measured
 * against 81 calculated at b/a = 0.25 (Merhar et al., BioResources 12(3), 2017, 5569–5582), hence the factor 0.74.
 */
const YOUNG_N_PER_MM2 = 210_000;
export const REAL_BLADE_FACTOR = 0.74;

const RATIO = [0.1, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5];
const ALPHA = [0.3599, 0.5111, 0.6068, 0.7242, 0.871, 1.0583, 1.6276];
const BETA = [1.512, 1.558, 1.574, 1.589, 1.602, 1.615, 1.639];

/** Natural cubic spline through (x, y), evaluated at `at`, which must lie within x. */
function spline(x: readonly number[], y: readonly number[], at: number): number {
  const n = x.length;
  const second = new Float64Array(n);
  const u = new Float64Array(n);
  for (let i = 1; i < n - 1; i++) {
    const share = (x[i]! - x[i - 1]!) / (x[i + 1]! - x[i - 1]!);
    const p = share * second[i - 1]! + 2;
    second[i] = (share - 1) / p;
    const bend = (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!) - (y[i]! - y[i - 1]!) / (x[i]! - x[i - 1]!);
    u[i] = ((6 * bend) / (x[i + 1]! - x[i - 1]!) - share * u[i - 1]!) / p;
  }
  for (let i = n - 2; i >= 0; i--) second[i] = second[i]! * second[i + 1]! + u[i]!;
  let k = 0;
  while (k < n - 2 && at > x[k + 1]!) k++;
  const h = x[k + 1]! - x[k]!;
  const a = (x[k + 1]! - at) / h;
  const b = 1 - a;
  return a * y[k]! + b * y[k + 1]! + (((a ** 3 - a) * second[k]! + (b ** 3 - b) * second[k + 1]!) * h * h) / 6;
}

/** α for a ratio of collar to rim of 0.1…0.5. */
export function plateAlpha(ratio: number): number {
  return Math.exp(spline(RATIO, ALPHA.map(Math.log), ratio));
}

/** β for a ratio of collar to rim of 0.1…0.5. */
export function plateBeta(ratio: number): number {
  return spline(RATIO, BETA, ratio);
}

/** Stiffness of the ideal disc at its rim, N/mm; diameters and plate thickness in mm. */
export function idealStiffness(diameterMm: number, plateMm: number, collarMm: number): number {
  const radius = diameterMm / 2;
  return (plateAlpha(collarMm / diameterMm) * YOUNG_N_PER_MM2 * plateMm ** 3) / radius ** 2;
}
