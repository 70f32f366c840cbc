/** One row a method: what decides between them, each figure with what it may be off by. */
import { methodFigures } from '../../../sim/export/verdict-figures';
import { quantileInterval } from '../../../sim/statistics/quantiles';
import { gapText, limitText, moneyText, shareWithInterval, timeText } from '../../../sim/wording/figures';
import { usePredictionToSave } from '../../exports/project-exports';
import { SaveTable } from '../../exports/save-table';
import { ColumnHead, Explained, ExplainedHead } from '../../inputs/explained';
import type { Display } from '../../inputs/field-props';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { MethodLabel } from '../../parts/method-mark';
import { Scrolls } from '../../parts/scrolls';
import { useDocument } from '../../state/document-store';
import { useShownProject } from '../../state/shown-project';
import type { WeighedMethod } from '../../state/use-verdict';

const TITLE = 'Method by method';

export function VerdictTable({ methods }: { methods: readonly WeighedMethod[] }) {
  const display = useDocument((state) => state.project.display);
  const limitMm = useShownProject().limits.showGapMm;
  return (
    <section className="group saved" aria-labelledby="figures-title">
      <h2>
        <span id="figures-title">{TITLE}</span> <ExplainedHead head={TITLE} />
      </h2>
      <SaveFigures methods={methods} display={display} />
      <Scrolls label="Method by method, table">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Method</th>
              <th scope="col" className="widest">
                Good at {lengthsOnOneLine(limitText(limitMm, display))}
                <Explained term="goodPiece" />
              </th>
              <ColumnHead head="Gap that 95 of 100 stay under" />
              <ColumnHead head="Will not close" />
              <ColumnHead head="Time for a good piece" />
              <ColumnHead head="Cost of a good piece" />
            </tr>
          </thead>
          <tbody>
            {methods.map((method) => (
              <MethodRow key={method.name} method={method} display={display} />
            ))}
          </tbody>
        </table>
      </Scrolls>
      <p className="note">
        In brackets: where the figure lies, 95 times in 100, if more rings were simulated. It says nothing about how
        much rings differ.
      </p>
    </section>
  );
}

/** By itself: whether there is a prediction to save changes with every edit. */
function SaveFigures({ methods, display }: { methods: readonly WeighedMethod[]; display: Display }) {
  const figures = () =>
    methodFigures(
      methods.map(({ result }) => result),
      display,
    );
  return <SaveTable what={TITLE} table={figures} more={[usePredictionToSave()]} />;
}

function MethodRow({ method, display }: { method: WeighedMethod; display: Display }) {
  const { index, name, isFresh, isGraded, result } = method;
  const { yield: good, willNotClose, cost } = result.prediction;
  const p95 = quantileInterval(result.sample.showGapMm, 0.95);
  const uncertaintyMm = (p95.high - p95.low) / 2;
  const gap = (mm: number): string => gapText(mm, display, uncertaintyMm);
  const gapInterval =
    p95.low === p95.high || gap(p95.value).startsWith('over')
      ? ''
      : ` (${gap(p95.low).replace(/ \D+$/, '')} to ${gap(p95.high).replace(/ \D+$/, '')})`;
  const costWords =
    cost.perGoodPiece === null
      ? 'fewer than 1 good in 1,000'
      : `${moneyText(cost.perGoodPiece)}${
          cost.low === null || cost.high === null ? '' : ` (${moneyText(cost.low)} to ${moneyText(cost.high)})`
        }`;
  const costClass = isFresh && isGraded ? undefined : 'softened';
  return (
    <tr className={isFresh ? undefined : 'softened'}>
      <th scope="row">
        <MethodLabel index={index} name={name} />
      </th>
      <td className="decides">
        <Figure text={shareWithInterval(good)} />
      </td>
      <td className="decides">
        <Figure text={`${gap(p95.value)}${gapInterval}`} />
      </td>
      <td>
        <Figure text={shareWithInterval(willNotClose)} />
      </td>
      <td className={isFresh && isGraded ? 'whole' : 'whole softened'}>
        <Figure text={timeText(cost.minutesPerPiece, result.minutesInterval)} />
      </td>
      <td className={costClass}>
        <Figure text={costWords} />
      </td>
    </tr>
  );
}

/** The figure large, the interval in brackets beside it smaller. */
function Figure({ text }: { text: string }) {
  const [, figure = text, interval = ''] = /^(.*?) (\(.*\))$/.exec(text) ?? [];
  return (
    <>
      <strong>{figure}</strong>
      {interval !== '' && <span className="interval"> {interval}</span>}
    </>
  );
}
