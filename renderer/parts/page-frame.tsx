/** Every page alike: its question and the answer in one sentence on top, inputs to the left, consequences to the right. */
import type { ReactNode } from 'react';
import { Orientation } from './orientation';

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
}

export function PageFrame({ question, answer, beside, inputs, consequences, wideInputs = false }: PageFrameProps) {
  return (
    <div className="page-frame" data-wide-inputs={wideInputs || undefined}>
      <div className="page-answer">
        <p className="page-question">{question}</p>
        <h1>{answer}</h1>
        {beside}
      </div>
      <Orientation />
      <section className="page-inputs" aria-label="What you decide">
        {inputs}
      </section>
      <section className="page-consequences" aria-label="What follows">
        {consequences}
      </section>
    </div>
  );
}
