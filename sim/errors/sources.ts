/** All error sources of one method, put together from their families. */
import type { RingGeometry } from '../geometry/ring';
import { pitchMm, stavesPerStrip, stripNeededMm } from '../geometry/ring';
import type { Method, Project, SourceName } from '../project/document';
import { bladeDraws, bladeShape, rowsOfCuts } from './blade';
import { type Cut, cutsOf } from './cuts';
import { DrawCollector, type DrawList } from './draw-list';
import { guideDraws } from './guide';
import { lengthDraws } from './length';
import { stockDraws } from './stock';
import { tiltDraws } from './tilt';

/** The cuts of one method, strip by strip. Lengths mm. */
export function methodCuts(project: Project, method: Method, geometry: RingGeometry): Cut[] {
  const { piece, stock } = project;
  return cutsOf(
    piece.sides,
    method.sequence,
    stavesPerStrip(piece.sides, stock.stripCount),
    stock.stripLengthMm ?? stripNeededMm(geometry, method.blade, method.sequence, stock),
    stock.trimMm,
    pitchMm(geometry, method.blade, method.sequence),
  );
}

/** Every elementary draw of the method, less the sources that are to count as perfect. */
export function drawList(
  project: Project,
  method: Method,
  geometry: RingGeometry,
  cuts: readonly Cut[],
  perfect: ReadonlySet<SourceName> = new Set(),
): DrawList {
  const { grain } = project.piece;
  const to = new DrawCollector();
  tiltDraws(method.tilt, cuts, geometry.sides, method.sequence, to);
  guideDraws(method.guide, cuts, method.sequence, grain, geometry, to);
  stockDraws(project.stock, cuts, method.sequence, grain, geometry, to);
  lengthDraws(method, project.stock, cuts, geometry, to);
  bladeDraws(method.blade, cuts, method.sequence, to);
  const shape = bladeShape(method.blade);
  const kept = (entry: { source: SourceName | 'aim' }) => entry.source === 'aim' || !perfect.has(entry.source);
  return {
    sides: geometry.sides,
    draws: to.draws.filter(kept),
    offsets: to.offsets.filter(kept),
    rare: to.rare.filter(kept),
    cutRows: rowsOfCuts(cuts, geometry.sides, method.sequence),
    bulgeMm: perfect.has('bulge') ? 0 : shape.bulgeMm,
    snag: perfect.has('snags') ? { ...shape.snag, chance: 0 } : shape.snag,
    truingMm: method.assembly.by === 'twoHalves' && !perfect.has('truing') ? method.assembly.truingMm : 0,
  };
}

/** The sources that do anything at all in this method, in the order of the tables. */
export function activeSources(list: DrawList): Set<SourceName> {
  const active = new Set<SourceName>();
  for (const { source } of [...list.draws, ...list.offsets, ...list.rare]) if (source !== 'aim') active.add(source);
  if (list.bulgeMm > 0) active.add('bulge');
  if (list.snag.chance > 0) active.add('snags');
  if (list.truingMm > 0) active.add('truing');
  return active;
}
