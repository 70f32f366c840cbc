/** Ways of working to start a new method from, made fit for the piece. */
import type { Method, Piece } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { applyPreset } from '../../sim/project/presets';

/** More than these are hard to tell apart in a chart, and hard to choose from. */
export const MOST_METHODS = 6;

export function startingMethods(piece: Piece): Method[] {
  return exampleProject().methods.map((method) =>
    // With the grain up the stave the staves are ripped: along the fence, the board turned over between rips.
    piece.grain === 'upStave' ? { ...applyPreset(method, 'guide', 'ripFence'), sequence: 'flipFace' } : method,
  );
}
