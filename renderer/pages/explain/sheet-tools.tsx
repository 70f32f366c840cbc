/** What is done with the sheet: print it, or keep it as a PDF. */
import { useState } from 'react';
import type { MakerAnswers, SheetInput, SheetKind } from '../../../main/contract/report';
import { fileNameFor } from '../../exports/file-name';
import { SaveSheetPicture } from '../../exports/save-sheet-picture';
import { useHost } from '../../parts/host-context';
import { useOffer } from '../../state/offered-commands';
import { useProblems } from '../../state/problems';
import { announce, refuse } from '../../state/view-store';

interface SheetToolsProps {
  input: SheetInput;
  kind: SheetKind;
  answers: MakerAnswers;
}

export function SheetTools({ input, kind, answers }: SheetToolsProps) {
  const host = useHost();
  const [isPrinting, setPrinting] = useState(false);
  const isRefused = useProblems().length > 0;
  const savePdf = async (): Promise<void> => {
    setPrinting(true);
    try {
      // What makes HTML of a sheet is large, and seldom wanted.
      const { renderReport } = await import('../../report/render-report');
      const html = renderReport(input, kind, answers);
      const answer = await host.printPdf({ name: pdfName(input, kind), html });
      if (answer === null) return;
      if ('problem' in answer) refuse('No PDF was made', [answer.problem]);
      else announce(`${answer.name} is made.`);
    } finally {
      setPrinting(false);
    }
  };
  useOffer('print', () => window.print());
  useOffer('save-pdf', savePdf);
  return (
    <div className="sheet-tools">
      <button type="button" disabled={isRefused} onClick={() => window.print()}>
        Print
      </button>
      <button type="button" disabled={isPrinting || isRefused} onClick={() => void savePdf()}>
        {isPrinting ? 'Making the PDF' : 'Save as PDF'}
      </button>
      {kind === 'client' && <SaveSheetPicture />}
    </div>
  );
}

function pdfName({ project }: SheetInput, kind: SheetKind): string {
  return `${fileNameFor(project.title).split('.')[0]}-${kind}.pdf`;
}
