/** The figures of test cuts: what each number of rounds comes to, and what each test piece tells. */

import type { RoundsValue, TestValue } from '../decide/test-value';
import type { TestPieceFigures, TestPieceKind } from '../testing/bench-card';
import type { Display } from '../wording/figures';
import { TEST_KIND_WORDS } from '../wording/test-pieces';
import {
  type Figure,
  type FigureTable,
  intervalColumns,
  lengthColumn,
  lengthFigure,
  plainColumn,
  shareColumns,
  shareFigures,
} from './figure-table';

/** One row for each number of rounds, as `testValueTable`. */
export function testValueFigures({ rounds }: TestValue): FigureTable {
  return {
    columns: [
      plainColumn('Rounds, at most'),
      plainColumn('Made on average'),
      ...shareColumns('Good'),
      ...intervalColumns('Cost of a good piece', 'money'),
      ...intervalColumns('Time for a good piece', 'min'),
      ...intervalColumns('More for a job than untested', 'money'),
      ...shareColumns('Jobs that come out cheaper'),
    ],
    rows: rounds.map((round) => [
      round.maxRounds,
      round.cost.testRounds,
      ...shareFigures(round.yield),
      round.cost.perGoodPiece,
      round.cost.low,
      round.cost.high,
      round.cost.minutesPerPiece,
      round.minutesInterval?.low ?? null,
      round.minutesInterval?.high ?? null,
      ...againstUntested(round),
    ]),
  };
}

/** Without a round there is nothing to compare. */
function againstUntested({ maxRounds, extraCost, pays }: RoundsValue): Figure[] {
  if (maxRounds === 0) return Array.from({ length: 6 }, () => null);
  return [extraCost.value, extraCost.low, extraCost.high, ...shareFigures(pays)];
}

export interface JudgedTestPiece {
  kind: TestPieceKind;
  figures: TestPieceFigures;
  /** Why it cannot be used; null when it can. */
  refusal: string | null;
}

/** One row a test piece; one that cannot be used has no figures. */
export function testPieceTable(pieces: readonly JudgedTestPiece[], display: Display): FigureTable {
  return {
    columns: [
      plainColumn('Test piece'),
      plainColumn('Setting it tells'),
      lengthColumn('1° shows as', display),
      plainColumn('Smallest error told', '°'),
    ],
    rows: pieces.map(({ kind, figures, refusal }) =>
      refusal === null
        ? [
            TEST_KIND_WORDS[kind].label,
            figures.setting,
            lengthFigure(Math.abs(figures.mmPerDeg), display),
            figures.leastToldDeg,
          ]
        : [TEST_KIND_WORDS[kind].label, null, null, null],
    ),
  };
}
