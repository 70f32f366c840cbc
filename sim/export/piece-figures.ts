/** The figures of the piece: what the ring measures, and what each method takes out of the strips. */
import type { GeometrySummary } from '../geometry/ring';
import type { Display } from '../wording/figures';
import { type FigureTable, lengthColumn, lengthFigure, plainColumn } from './figure-table';

/** One column a size, one row: the nominal ring and how the saw is set. */
export function geometryFigures(geometry: GeometrySummary, display: Display): FigureTable {
  const lengths: [string, number][] = [
    ['Stave width, wide end', geometry.staveWidthMm],
    ['Stave width, mid-height', geometry.staveWidthMidMm],
    ['Outside flats', geometry.outsideFlatsMm],
    ['Outside corners', geometry.outsideCornersMm],
    ['Clear opening, wide end', geometry.clearOpeningWideMm],
    ['Clear opening, narrow end', geometry.clearOpeningNarrowMm],
    ['Joint through the thickness', geometry.jointLengthMm],
  ];
  return {
    columns: [
      plainColumn('Blade tilt from square', '°'),
      plainColumn('Gauge swing from square', '°'),
      ...lengths.map(([name]) => lengthColumn(name, display)),
    ],
    rows: [[geometry.bevelDeg, geometry.crosscutDeg, ...lengths.map(([, mm]) => lengthFigure(mm, display))]],
  };
}

export interface MethodCuts {
  name: string;
  cuts: number;
  pitchMm: number;
  stripNeededMm: number;
}

/** One row a method. */
export function cutPlanFigures(methods: readonly MethodCuts[], display: Display): FigureTable {
  return {
    columns: [
      plainColumn('Method'),
      plainColumn('Cuts'),
      lengthColumn('Strip for one stave', display),
      lengthColumn('Strip needed', display),
    ],
    rows: methods.map(({ name, cuts, pitchMm, stripNeededMm }) => [
      name,
      cuts,
      lengthFigure(pitchMm, display),
      lengthFigure(stripNeededMm, display),
    ]),
  };
}
