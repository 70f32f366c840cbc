/** Are test cuts worth it, how many rounds, with which test piece; and at the bench, what a reading asks for. */
import { warnings } from '../../../sim/reading/checks';
import { countedSentence } from '../../../sim/wording/job-costs';
import { roundsAskedFor } from '../../../sim/wording/test-value';
import { CautionsLine } from '../../parts/cautions-line';
import { FailureBoundary } from '../../parts/failure-boundary';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { PageFrame } from '../../parts/page-frame';
import { useShownProject } from '../../state/shown-project';
import { BenchCard } from './bench-card';
import { PieceTable } from './piece-table';
import './test-cuts.css';
import { TestInputs } from './test-inputs';
import { useTestedIndex, useTestedMethod, useWorth, type Worth } from './use-test-cuts';
import { WorthChart } from './worth-chart';

export function TestCutsPage() {
  const project = useShownProject();
  const index = useTestedIndex();
  const tested = useTestedMethod();
  const worth = useWorth(index);
  const isSoft = !worth.isFresh;
  const warned = warnings(project).filter(({ path }) => path.startsWith(`methods[${index}].test.`));
  return (
    <PageFrame
      question="Are test cuts worth it, and what does one tell?"
      answer={
        <span className={isSoft ? 'softened' : undefined}>
          {worth.words?.headline ?? 'Test cuts are being weighed against none.'}
        </span>
      }
      beside={
        <>
          <CautionsLine />
          <p>
            <a href="#bench">To the bench card</a>
          </p>
        </>
      }
      inputs={<TestInputs index={index} tested={tested} />}
      consequences={
        <>
          {warned.length > 0 && (
            <ul className="warnings">
              {warned.map(({ path, sentence }) => (
                <li key={path}>{sentence}</li>
              ))}
            </ul>
          )}
          <WorthChart worth={worth} chosen={roundsAskedFor(project, index)} methodIndex={index} />
          {tested && (
            <>
              <FailureBoundary what="table of test pieces">
                <PieceTable tested={tested} />
              </FailureBoundary>
              <FailureBoundary what="bench card">
                <BenchCard tested={tested} />
              </FailureBoundary>
            </>
          )}
          {/* Below what is there from the start, so that nothing jumps when it comes. */}
          <Reasons worth={worth} index={index} isSoft={isSoft} />
          <p role="status" className="spoken">
            {isSoft ? '' : worth.words?.headline}
          </p>
        </>
      }
    />
  );
}

function Reasons({ worth, index, isSoft }: { worth: Worth; index: number; isSoft: boolean }) {
  const { methods, costs } = useShownProject();
  const method = methods[index];
  if (!worth.words || !method) return null;
  return (
    <section className="group reasons" aria-labelledby="worth-title">
      <h2 id="worth-title">What it rests on</h2>
      <ul className={isSoft ? 'softened' : undefined}>
        {[...worth.words.because, countedSentence(method.minutes, costs)].map((sentence) => (
          <li key={sentence}>{lengthsOnOneLine(sentence)}</li>
        ))}
      </ul>
    </section>
  );
}
