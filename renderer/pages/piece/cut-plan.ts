/** What cutting a ring takes with one method: cuts, pitch, and strip. */
import { cutsOf } from '../../../sim/errors/cuts';
import { pitchMm, type RingGeometry, stavesPerStrip, stripNeededMm } from '../../../sim/geometry/ring';
import type { Method, Project } from '../../../sim/project/document';

export interface CutPlan {
  cuts: number;
  pitchMm: number;
  stripNeededMm: number;
}

export function cutPlan(project: Project, geometry: RingGeometry, method: Method): CutPlan {
  const { piece, stock } = project;
  const { blade, sequence } = method;
  const strips = stavesPerStrip(piece.sides, stock.stripCount);
  const pitch = pitchMm(geometry, blade, sequence);
  const needed = stripNeededMm(geometry, blade, sequence, stock);
  const cuts = cutsOf(piece.sides, sequence, strips, needed, stock.trimMm, pitch).length;
  return { cuts, pitchMm: pitch, stripNeededMm: needed };
}
