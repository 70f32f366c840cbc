/** The sheet as it prints, on paper of its size. */
import { useLayoutEffect, useRef, useState } from 'react';
import type { MakerAnswers, SheetInput, SheetKind } from '../../../main/contract/report';
import { Scrolls } from '../../parts/scrolls';
import { ClientSheet } from '../../report/client-sheet';
import { MakerSheet } from '../../report/maker-sheet';

interface SheetPreviewProps {
  input: SheetInput;
  kind: SheetKind;
  answers: MakerAnswers;
  isSoft: boolean;
}

export function SheetPreview({ input, kind, answers, isSoft }: SheetPreviewProps) {
  const box = useRef<HTMLDivElement>(null);
  const runsOver = useRunsOver(box) && kind === 'client';
  return (
    <>
      {/* Always there, so that a screen reader hears it when it fills. */}
      <p role="status" className="sheet-over">
        {runsOver && 'This runs onto a second page. Shorten the closing words or leave something out.'}
      </p>
      <Scrolls label="The sheet as it prints">
        <div ref={box} className={isSoft ? 'softened' : undefined}>
          {kind === 'client' ? (
            <ClientSheet {...input} budget={answers.budget} />
          ) : (
            <MakerSheet {...input} answers={answers} />
          )}
        </div>
      </Scrolls>
    </>
  );
}

/** Whether the sheet is taller than its paper. */
function useRunsOver(box: React.RefObject<HTMLDivElement | null>): boolean {
  const [runsOver, setRunsOver] = useState(false);
  useLayoutEffect(() => {
    const sheet = box.current?.querySelector<HTMLElement>('.sheet');
    if (!sheet) return;
    const measure = (): void => {
      const paperPx = Number.parseFloat(getComputedStyle(sheet).minHeight);
      setRunsOver(sheet.offsetHeight > Math.ceil(paperPx));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(sheet);
    return () => observer.disconnect();
  });
  return runsOver;
}
