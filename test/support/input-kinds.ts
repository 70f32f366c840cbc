/**
 * The kinds of inputs that the worked examples of the metrology guides call for and the workshop does not, drawn from
 * the program's own random streams. Units are whatever the caller uses.
 */
import { fillNormals, fillUniforms } from '../../sim/random/normal';
import type { Generator } from '../../sim/random/xoshiro';

export interface Input {
  /** Fills `out` with independent values. */
  fill(generator: Generator, out: Float64Array): void;
  mean: number;
  sd: number;
}

export const normal = (mean: number, sd: number): Input => ({
  mean,
  sd,
  fill(generator, out) {
    fillNormals(generator, out);
    for (let i = 0; i < out.length; i++) out[i] = mean + sd * out[i]!;
  },
});

export const rectangular = (low: number, high: number): Input => ({
  mean: (low + high) / 2,
  sd: (high - low) / Math.sqrt(12),
  fill(generator, out) {
    fillUniforms(generator, out);
    for (let i = 0; i < out.length; i++) out[i] = low + (high - low) * out[i]!;
  },
});

/** Where a cycle between two ends stands at a moment picked blindly. JCGM 101:2008, 6.4.6. */
export const arcsine = (low: number, high: number): Input => ({
  mean: (low + high) / 2,
  sd: (high - low) / Math.sqrt(8),
  fill(generator, out) {
    fillUniforms(generator, out);
    for (let i = 0; i < out.length; i++)
      out[i] = (low + high) / 2 + ((high - low) / 2) * Math.sin(2 * Math.PI * out[i]!);
  },
});

/** A rectangle whose ends are known only to ± `inexact`, its middle exactly. JCGM 101:2008, 6.4.3. */
export const curvilinearTrapezoid = (low: number, high: number, inexact: number): Input => ({
  mean: (low + high) / 2,
  sd: Math.sqrt((high - low) ** 2 / 12 + inexact ** 2 / 9),
  fill(generator, out) {
    for (let i = 0; i < out.length; i++) {
      const from = low - inexact + 2 * inexact * generator.uniform();
      const to = low + high - from;
      out[i] = from + (to - from) * generator.uniform();
    }
  },
});

/** Student's t, shifted and scaled; whole degrees of freedom above 2. JCGM 101:2008, 6.4.9. */
export const student = (location: number, scale: number, dof: number): Input => ({
  mean: location,
  sd: scale * Math.sqrt(dof / (dof - 2)),
  fill(generator, out) {
    const normals = new Float64Array((dof + 1) * out.length);
    fillNormals(generator, normals);
    for (let i = 0, z = 0; i < out.length; i++) {
      const above = normals[z++]!;
      let squares = 0;
      for (let k = 0; k < dof; k++) squares += normals[z++]! ** 2;
      out[i] = location + (scale * above) / Math.sqrt(squares / dof);
    }
  },
});
