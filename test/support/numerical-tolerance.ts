/**
 * Half a unit in the last of the wanted significant digits of a standard uncertainty above 0: the numerical tolerance.
 *
 * Source: JCGM 101:2008, 7.9.2.
 */
export function numericalTolerance(standardUncertainty: number, digits: 1 | 2): number {
  // Writing the number out rounds it first, which may lift it to the next power of ten.
  const exponent = Number(standardUncertainty.toExponential(digits - 1).split('e')[1]);
  return 0.5 * 10 ** (exponent - digits + 1);
}
