/** Every page alike: its question and the answer in one sentence on top, inputs to the left, consequences to the right. */
import type { ReactNode } from 'react';
import type { Problem } from '../../sim/project/problem';
import { useProblems } from '../state/problems';
import { Orientation } from './orientation';
import { CANNOT_YET, Unanswered } from './unanswered';

interface PageFrameProps {
  question: string;
  /** The answer, in one sentence. */
  answer: ReactNode;
  /** What the answer rests on, smaller. */
  beside?: ReactNode;
  inputs: ReactNode;
  consequences: ReactNode;
  /** Whether the inputs need most of the width. */
  wideInputs?: boolean;
  /** The problems that leave the page without an answer; all, unless it is known better. */
  problems?: readonly Problem[];
}

export function PageFrame(props: PageFrameProps) {
  const { question, answer, beside, inputs, consequences, wideInputs = false } = props;
  const all = useProblems();
  const problems = props.problems ?? all;
  const isHeld = problems.length > 0;
  return (
    <div className="page-frame" data-wide-inputs={wideInputs || undefined} data-held={isHeld || undefined}>
      <div className="page-answer">
        <p className="page-question">{question}</p>
        <h1>{isHeld ? CANNOT_YET : answer}</h1>
        {isHeld ? <Unanswered problems={problems} /> : beside}
      </div>
      <Orientation />
      <section className="page-inputs" aria-label="What you decide">
        {inputs}
      </section>
      <section className={isHeld ? 'page-consequences softened' : 'page-consequences'} aria-label="What follows">
        {consequences}
      </section>
    </div>
  );
}
