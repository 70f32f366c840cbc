/** The widest gaps of all rings: as fifty dots, as the share of rings up to each gap, or as bars. */

import { memo } from 'react';
import type { FigureTable } from '../../../sim/export/figure-table';
import { barFigures, dotFigures, yieldFigures } from '../../../sim/export/verdict-figures';
import { NO_GAP_MM } from '../../../sim/geometry/thresholds';
import { quantileDots } from '../../../sim/statistics/dots';
import { countAtMost } from '../../../sim/statistics/ecdf';
import { wilson } from '../../../sim/statistics/wilson';
import { dotsText } from '../../../sim/wording/explain';
import { gapText, limitText, shareWithInterval } from '../../../sim/wording/figures';
import { type BarRow, BarRows, barEdges, barShares } from '../../charts/bar-rows';
import { ChartFrame } from '../../charts/chart-frame';
import { DOTS, DotRows } from '../../charts/dot-rows';
import { finerTicks, type GapScale } from '../../charts/gap-scale';
import { TextTableView } from '../../charts/text-table';
import { YieldCurve } from '../../charts/yield-curve';
import { ChoiceField } from '../../inputs/choice-field';
import type { Choice, Display } from '../../inputs/field-props';
import type { WeighedMethod } from '../../state/use-verdict';
import { type GapView, useVerdictView } from '../../state/verdict-view';
import { curveLine } from './curve-line';
import type { LimitMoves } from './limit-moves';

export interface GapChartProps {
  methods: readonly WeighedMethod[];
  scale: GapScale;
  display: Display;
  limitMm: number;
  formatGap: (mm: number) => string;
  moves: LimitMoves;
}

const TITLE = 'The widest gap that shows, ring by ring';

const VIEWS: readonly Choice<GapView>[] = [
  { value: 'dots', label: `${DOTS} dots` },
  { value: 'running', label: 'Running count' },
  { value: 'bars', label: 'Bars' },
];

const CAPTIONS: Readonly<Record<GapView, (unit: string) => string>> = {
  dots: (unit) =>
    `Each dot is one ring in ${DOTS}, at its widest gap in ${unit}; left of 0 there is no gap to speak of. Hollow dots are over the limit.`,
  running: (unit) => `Of 100 rings, how many have no wider gap than so many ${unit}, whatever else is asked of them.`,
  bars: (unit) =>
    `The higher a bar, the more rings have their widest gap between its edges, in ${unit}. Figures: of 100 rings, how many have no gap to speak of or are beyond the scale. Hollow bars are over the limit.`,
};

/** Drawn anew only for other rings or another limit. */
export const GapChart = memo(function GapChart(props: GapChartProps) {
  const view = useVerdictView((state) => state.gapView);
  const unit = props.display === 'metric' ? 'mm' : 'inches';
  const Shown = SHOWN[view];
  return (
    <ChartFrame
      title={TITLE}
      caption={
        <>
          {CAPTIONS[view](unit)}
          {view === 'running' && <span data-not-pictured> Drag the line to move the limit.</span>}
        </>
      }
      table={<GapTable {...props} view={view} />}
      figures={() => FIGURES[view](props)}
    >
      <div className="chart-view">
        <ChoiceField
          label="Shown as"
          layout="row"
          value={view}
          choices={VIEWS}
          onChange={(gapView) => useVerdictView.setState({ gapView })}
        />
      </div>
      <Shown {...props} />
    </ChartFrame>
  );
});

const SHOWN: Readonly<Record<GapView, (props: GapChartProps) => React.ReactNode>> = {
  dots: DotView,
  running: RunningView,
  bars: BarView,
};

const FIGURES: Readonly<Record<GapView, (props: GapChartProps) => FigureTable>> = {
  dots: ({ methods, display }) =>
    dotFigures(
      methods.map((method) => ({ name: method.name, gapsMm: [...quantileDots(gapsOf(method), DOTS)] })),
      display,
    ),
  running: ({ methods, scale, display }) =>
    yieldFigures(
      methods.map((method) => ({ name: method.name, at: (mm) => shareUpTo(method, mm) })),
      finerTicks(scale),
      display,
    ),
  bars: ({ methods, scale, display }) => {
    const edgesMm = barEdges(scale);
    const lines = methods.map((method) => ({ name: method.name, ...barShares(gapsOf(method), edgesMm) }));
    return barFigures(lines, edgesMm, display);
  },
};

const gapsOf = ({ result }: WeighedMethod): Float64Array => result.sample.showGapMm;

function DotView({ methods, scale, limitMm, display, formatGap }: GapChartProps) {
  const rows = methods.map((method) => {
    const gapsMm = [...quantileDots(gapsOf(method), DOTS)];
    return { ...method, gapsMm, sentence: dotsText(gapsMm, limitMm, display) };
  });
  return <DotRows rows={rows} scale={scale} limitMm={limitMm} formatGap={formatGap} />;
}

function shareUpTo(method: WeighedMethod, mm: number) {
  const gapsMm = gapsOf(method);
  return wilson(countAtMost(gapsMm, mm), gapsMm.length);
}

function RunningView({ methods, scale, limitMm, display, formatGap, moves }: GapChartProps) {
  const limit = limitText(limitMm, display);
  const lines = methods.map((method) => curveLine(method, gapsOf(method), scale, limitMm));
  return (
    <YieldCurve
      lines={lines}
      scale={scale}
      limitMm={limitMm}
      limitText={limit}
      formatGap={formatGap}
      summary={methods
        .map((method) => `${method.name}: ${shareWithInterval(shareUpTo(method, limitMm))} up to ${limit}`)
        .join('; ')}
      {...moves}
    />
  );
}

function BarView({ methods, scale, limitMm, display, formatGap }: GapChartProps) {
  const edgesMm = barEdges(scale);
  const rows: BarRow[] = methods.map((method) => {
    const within = shareWithInterval(shareUpTo(method, limitMm));
    return {
      ...method,
      ...barShares(gapsOf(method), edgesMm),
      sentence: `${within} up to ${limitText(limitMm, display)}.`,
    };
  });
  return <BarRows rows={rows} edgesMm={edgesMm} scale={scale} limitMm={limitMm} formatGap={formatGap} />;
}

function GapTable({ methods, scale, display, view }: GapChartProps & { view: GapView }) {
  const names = methods.map(({ name }) => name);
  const ticksMm = scale.ticksMm.slice(1);
  if (view === 'dots') {
    const dots = methods.map((method) => quantileDots(gapsOf(method), DOTS));
    const rows = ticksMm.map((mm) => [gapText(mm, display), ...dots.map((gaps) => `${countAtMost(gaps, mm)}`)]);
    const all = ['any gap', ...dots.map((gaps) => `${gaps.length}`)];
    return <TextTableView table={{ head: ['Dots at or under', ...names], rows: [...rows, all] }} />;
  }
  if (view === 'running') {
    const rows = ticksMm.map((mm) => [
      gapText(mm, display),
      ...methods.map((method) => shareWithInterval(shareUpTo(method, mm))),
    ]);
    return <TextTableView table={{ head: ['Rings at or under', ...names], rows }} />;
  }
  const edgesMm = barEdges(scale);
  const bars = methods.map((method) => barShares(gapsOf(method), edgesMm));
  const inHundred = (share: number): string => (100 * share).toFixed(1);
  const plain = (mm: number): string => gapText(mm, display).replace(/ \D+$/, '');
  const rows = [
    [`under ${gapText(NO_GAP_MM, display, 0.001)}`, ...bars.map(({ noGap }) => inHundred(noGap))],
    ...edgesMm
      .slice(1)
      .map((toMm, i) => [
        `${plain(edgesMm[i] ?? 0)} to ${gapText(toMm, display)}`,
        ...bars.map(({ onScale }) => inHundred(onScale[i] ?? 0)),
      ]),
    [`over ${gapText(scale.maxMm, display)}`, ...bars.map(({ beyond }) => inHundred(beyond))],
  ];
  return <TextTableView table={{ head: ['Gap, rings of 100', ...names], rows }} />;
}
