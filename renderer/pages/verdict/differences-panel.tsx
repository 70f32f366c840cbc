/** How much better or worse each method is than one of them, on the same luck, with where the difference may lie. */
import { memo, type ReactNode } from 'react';
import { differenceFigures } from '../../../sim/export/verdict-figures';
import type { Difference } from '../../../sim/statistics/paired';
import {
  costDifferenceText,
  differenceTable,
  gapDifferenceText,
  shareDifferenceText,
} from '../../../sim/wording/differences';
import { OVER_GAP_MM } from '../../../sim/wording/figures';
import { MethodLabel, markOf } from '../../app/method-mark';
import { ChartFrame } from '../../charts/chart-frame';
import { TextTableView } from '../../charts/text-table';
import { ChoiceField } from '../../inputs/choice-field';
import { useDocument } from '../../state/document-store';
import { useVerdictView } from '../../state/verdict-view';
import './differences.css';
import { type HeldMethod, heldAgainst, RINGS_COMPARED } from './held-against';
import type { WeighedMethod } from './use-verdict';

const BEST = '';

/** Rendered anew only for other methods: to hold them against each other takes longer than a redraw may. */
export const DifferencesPanel = memo(function DifferencesPanel({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const wanted = useVerdictView((view) => view.heldAgainst);
  const found = heldAgainst(methods, wanted);
  if (!found || methods.length < 2) return null;
  const { against, held } = found;
  const others = held.filter(({ name }) => name !== against.name);
  const rows = others.map((method) => cellsOf(method, (gap) => gapDifferenceText(gap, display)));
  const isCapped = methods.some(({ result }) => result.prediction.trials > RINGS_COMPARED);
  const choices = [
    { value: BEST, label: 'The best of them', note: 'as recommended above' },
    ...methods.map(({ name }) => ({ value: name, label: name })),
  ];
  return (
    <ChartFrame
      title={`Better or worse than “${against.name}”`}
      caption={`Each method on the same luck as “${against.name}”: the mark is the difference, the band where it lies 95 times in 100; a band that crosses the middle line cannot be told from no difference.${isCapped ? ` From the first ${RINGS_COMPARED.toLocaleString('en')} rings.` : ''}`}
      table={<TextTableView table={differenceTable(against.name, held, display)} />}
      figures={() => differenceFigures(held, display)}
    >
      <div className="held-against">
        <ChoiceField
          label="Held against"
          layout="menu"
          value={methods.some(({ name }) => name === wanted) ? (wanted ?? BEST) : BEST}
          choices={choices}
          onChange={(name) => useVerdictView.setState({ heldAgainst: name === BEST ? null : name })}
        />
      </div>
      <div className="difference-grid" role="presentation">
        <div className="difference-row difference-head" aria-hidden="true">
          <span />
          <Heading title="Good pieces of 100" low="fewer" high="more" />
          <Heading title="Gap that 95 of 100 stay under" low="tighter" high="wider" />
          <Heading title="Cost of a good piece" low="cheaper" high="dearer" />
        </div>
        <ul>
          {others.map((method, row) => (
            <li
              key={method.name}
              className={method.isFresh && against.isFresh ? 'difference-row' : 'difference-row softened'}
            >
              <MethodLabel index={method.index} name={method.name} />
              {KINDS.map((kind) => (
                <Cell
                  key={kind}
                  words={WORDS[kind]}
                  index={method.index}
                  cell={rows[row]?.[kind] ?? null}
                  reach={reachOf(rows.map((cells) => cells[kind]))}
                  isSoft={!(method.isGraded && against.isGraded) && kind !== 'gap'}
                />
              ))}
            </li>
          ))}
        </ul>
      </div>
    </ChartFrame>
  );
});

const KINDS = ['good', 'gap', 'cost'] as const;
type Kind = (typeof KINDS)[number];

const WORDS: Readonly<Record<Kind, string>> = {
  good: 'Good pieces of 100',
  gap: 'Gap that 95 of 100 stay under',
  cost: 'Cost of a good piece',
};

interface CellFigures {
  difference: Difference;
  text: string;
  /** A ring that does not close has a part in it: it is no number, and its mark stands at the end of the scale. */
  isBeyond: boolean;
}

function cellsOf({ differences }: HeldMethod, gapText: (gap: Difference) => string): Record<Kind, CellFigures | null> {
  if (!differences) return { good: null, gap: null, cost: null };
  const { yield: good, showGapP95Mm, cost } = differences;
  return {
    good: { difference: good, text: shareDifferenceText(good).replaceAll(' in 100', ''), isBeyond: false },
    gap: {
      difference: showGapP95Mm,
      text: gapText(showGapP95Mm),
      isBeyond: Math.abs(showGapP95Mm.value) > OVER_GAP_MM,
    },
    cost: cost && { difference: cost, text: costDifferenceText(cost), isBeyond: false },
  };
}

/** Half the width of a column's scale: all its bands fit. */
function reachOf(cells: readonly (CellFigures | null)[]): number {
  const ends = cells.flatMap((cell) =>
    cell && !cell.isBeyond ? [Math.abs(cell.difference.low), Math.abs(cell.difference.high)] : [],
  );
  return Math.max(...ends, Number.MIN_VALUE) * 1.08;
}

function Heading({ title, low, high }: { title: string; low: string; high: string }) {
  return (
    <span className="difference-title">
      <span>{title}</span>
      <span className="difference-sides">
        <span>← {low}</span>
        <span>{high} →</span>
      </span>
    </span>
  );
}

interface CellProps {
  words: string;
  index: number;
  cell: CellFigures | null;
  reach: number;
  isSoft: boolean;
}

function Cell({ words, index, cell, reach, isSoft }: CellProps): ReactNode {
  if (cell === null) return <span className="difference-cell difference-none">no figure</span>;
  const at = (value: number): string => `${50 + 50 * Math.min(1, Math.max(-1, value / reach))}%`;
  const { difference, text, isBeyond } = cell;
  const [, figure = text, interval = ''] = /^(.*?) (\(.*\))$/.exec(text) ?? [];
  const { colour, path } = markOf(index);
  return (
    <span className={isSoft ? 'difference-cell softened' : 'difference-cell'}>
      <span className="difference-scale" aria-hidden="true" style={{ color: colour }}>
        <span className="difference-none-line" />
        {!isBeyond && (
          <span
            className="difference-band"
            style={{
              insetInlineStart: at(difference.low),
              insetInlineEnd: `calc(100% - ${at(difference.high)})`,
            }}
          />
        )}
        <svg
          className="difference-mark"
          viewBox="0 0 12 12"
          aria-hidden="true"
          style={{ insetInlineStart: at(difference.value) }}
        >
          <path d={path} fill={colour} />
        </svg>
      </span>
      <span className="difference-figure">
        <span className="difference-word">{words} </span>
        <strong>{figure}</strong> <span className="interval">{interval}</span>
      </span>
    </span>
  );
}
