/** Which method? The recommendation, with the evidence to the right and the limit to move on the left. */
import { useState } from 'react';
import { FailureBoundary } from '../../parts/failure-boundary';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { LimitInputs } from '../../parts/limit-inputs';
import { PageFrame } from '../../parts/page-frame';
import { WorkMark } from '../../parts/work-mark';
import { useAfterDrawing } from '../../state/after-drawing';
import { useVerdictOnScreen, type WeighedMethod } from '../../state/use-verdict';
import { DifferencesPanel } from './differences-panel';
import { LeadHinges } from './lead-hinges';
import { MethodSwitches } from './method-switches';
import { RunInputs } from './run-inputs';
import { VerdictCharts } from './verdict-charts';
import { VerdictTable } from './verdict-table';

export function VerdictPage() {
  const verdict = useVerdictOnScreen();
  // What takes longer follows once the figures are drawn, and waits for figures that fit.
  const calmMethods = useAfterDrawing(useLastRefined(verdict.methods));
  const { headline, because } = verdict.recommendation;
  const isSoft = verdict.methods.some(({ isFresh }) => !isFresh);
  const isEmpty = verdict.methods.length === 0;
  return (
    <PageFrame
      question="Which method?"
      answer={
        <span className={isSoft ? 'softened' : undefined}>
          {isEmpty ? 'The first rings are being closed.' : headline}
        </span>
      }
      inputs={
        <>
          <LimitInputs />
          <MethodSwitches />
          <RunInputs />
        </>
      }
      consequences={
        <>
          <WorkMark />
          {!isEmpty && (
            <>
              <FailureBoundary what="charts of the verdict">
                <VerdictCharts methods={verdict.methods} />
              </FailureBoundary>
              <VerdictTable methods={verdict.methods} />
              <div className={isSoft ? 'softened' : undefined}>
                <FailureBoundary what="chart of differences">
                  <DifferencesPanel methods={calmMethods} />
                </FailureBoundary>
              </div>
              <section className="group reasons" aria-labelledby="reasons-title">
                <h2 id="reasons-title">What it rests on</h2>
                <ul className={isSoft ? 'softened' : undefined}>
                  {because.map((sentence) => (
                    <li key={sentence}>{lengthsOnOneLine(sentence)}</li>
                  ))}
                </ul>
                <LeadHinges methods={verdict.methods} />
              </section>
            </>
          )}
        </>
      }
    />
  );
}

/** The methods when last all of them were fresh and more than a preview; as they are where that never was so. */
function useLastRefined(methods: readonly WeighedMethod[]): readonly WeighedMethod[] {
  const [kept, setKept] = useState(methods);
  const isUp = methods.every(({ isFresh, isRefined }) => isFresh && isRefined);
  if (isUp && kept !== methods) setKept(methods);
  const isOfThese = kept.length === methods.length && kept.every(({ name }, i) => name === methods[i]?.name);
  return isUp || !isOfThese ? methods : kept;
}
