/** Which method? The recommendation, with the evidence to the right and the limit to move on the left. */
import { PageFrame } from '../../app/page-frame';
import { unbroken } from '../../app/unbroken';
import { WorkMark } from '../../app/work-mark';
import { useProblems } from '../../state/problems';
import { DifferencesPanel } from './differences-panel';
import { LeadHinges } from './lead-hinges';
import { LimitInputs } from './limit-inputs';
import { MethodSwitches } from './method-switches';
import { RunInputs } from './run-inputs';
import { useVerdict } from './use-verdict';
import { VerdictCharts } from './verdict-charts';
import { VerdictTable } from './verdict-table';

export function VerdictPage() {
  const verdict = useVerdict();
  const problems = useProblems();
  const { headline, because } = verdict.recommendation;
  const isSoft = problems.length > 0 || verdict.methods.some(({ isFresh }) => !isFresh);
  const isEmpty = verdict.methods.length === 0;
  return (
    <PageFrame
      question="Which method?"
      answer={
        <span className={isSoft ? 'softens softened' : 'softens'}>
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
          {problems.length > 0 && (
            <ul className="problems">
              {problems.map(({ path, sentence }) => (
                <li key={path}>{sentence}</li>
              ))}
            </ul>
          )}
          {!isEmpty && (
            <>
              <VerdictCharts methods={verdict.methods} />
              <VerdictTable methods={verdict.methods} />
              <DifferencesPanel methods={verdict.methods} />
              <section className="group reasons" aria-labelledby="reasons-title">
                <h2 id="reasons-title">What it rests on</h2>
                <ul className={isSoft ? 'softens softened' : 'softens'}>
                  {because.map((sentence) => (
                    <li key={sentence}>{unbroken(sentence)}</li>
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
