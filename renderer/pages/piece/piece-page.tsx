/** What is made, and how the saw is set for it: drawing, settings, strips and cautions follow every change at once. */
import { useState } from 'react';
import { ringGeometry } from '../../../sim/geometry/ring';
import type { Project } from '../../../sim/project/document';
import { warnings } from '../../../sim/reading/checks';
import { CAUTIONS_TITLE } from '../../../sim/wording/cautions';
import { settingSentence } from '../../../sim/wording/setting';
import { RingElevation } from '../../drawing/ring-elevation';
import { RingPlan } from '../../drawing/ring-plan';
import { StaveDrawing } from '../../drawing/stave-drawing';
import { SavedDrawing } from '../../exports/saved-drawing';
import { CautionGroups, ShortHold } from '../../parts/caution-groups';
import { CAUTIONS_ID } from '../../parts/cautions-line';
import { FailureBoundary } from '../../parts/failure-boundary';
import { LimitInputs } from '../../parts/limit-inputs';
import { PageFrame } from '../../parts/page-frame';
import { useDocument } from '../../state/document-store';
import { useProblems } from '../../state/problems';
import { useView } from '../../state/view-store';
import { CostInputs } from './cost-inputs';
import { CutTable } from './cut-table';
import { CuttingOrder } from './cutting-order';
import { DisplayInputs } from './display-inputs';
import { InsertInputs } from './insert-inputs';
import { RingInputs } from './ring-inputs';
import { SawSettings } from './saw-settings';
import { Seasons } from './seasons';
import { StockInputs } from './stock-inputs';

export function PiecePage() {
  const project = useDocument((state) => state.project);
  const fractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  const problems = useProblems().filter(({ path }) => !path.startsWith('methods'));
  const drawn = useLastThatStands(project, problems.length === 0);
  const { piece, display } = drawn;
  const drawing = { piece, display, fractions, angleStyle };
  const geometry = ringGeometry(piece);
  const isSoft = problems.length > 0;
  const className = isSoft ? 'softened' : undefined;
  return (
    <PageFrame
      question="What do you make, and how is the saw set for it?"
      answer={<span className={className}>{settingSentence(drawn, angleStyle)}</span>}
      inputs={
        <>
          <RingInputs />
          <InsertInputs />
          <LimitInputs />
          <StockInputs />
          <CostInputs />
          <DisplayInputs />
        </>
      }
      consequences={
        <>
          <ShortHold project={project} isSpoken />
          {problems.length > 0 && (
            <ul className="problems">
              {problems.map(({ path, sentence }) => (
                <li key={path}>{sentence}</li>
              ))}
            </ul>
          )}
          <Warnings project={project} />
          <div className={isSoft ? 'piece-consequences softened' : 'piece-consequences'}>
            <div>
              <FailureBoundary what="plan">
                <SavedDrawing title="Plan of the ring">
                  <RingPlan {...drawing} />
                </SavedDrawing>
              </FailureBoundary>
              <FailureBoundary what="elevation">
                <SavedDrawing title="The ring from the side">
                  <RingElevation {...drawing} />
                </SavedDrawing>
              </FailureBoundary>
            </div>
            <div>
              <SawSettings geometry={geometry} />
              <FailureBoundary what="drawing of a stave">
                <SavedDrawing title="One stave">
                  <StaveDrawing {...drawing} />
                </SavedDrawing>
              </FailureBoundary>
            </div>
          </div>
          <CutTable geometry={geometry} />
          <div className={className}>
            <FailureBoundary what="order of the cuts">
              <CuttingOrder project={drawn} />
            </FailureBoundary>
          </div>
          <div className={className}>
            <FailureBoundary what="part on the seasons">
              <Seasons project={drawn} />
            </FailureBoundary>
          </div>
          <section className="group cautions" aria-labelledby={CAUTIONS_ID}>
            <h2 id={CAUTIONS_ID} tabIndex={-1}>
              {CAUTIONS_TITLE}
            </h2>
            <CautionGroups project={drawn} methods={drawn.methods} />
          </section>
        </>
      }
    />
  );
}

function Warnings({ project }: { project: Project }) {
  const found = warnings(project).filter(({ path }) => !path.startsWith('methods'));
  if (found.length === 0) return null;
  return (
    <ul className="warnings">
      {found.map(({ path, sentence }) => (
        <li key={path}>{sentence}</li>
      ))}
    </ul>
  );
}

/** A piece that cannot exist cannot be drawn: until it is mended the last one that could is shown, softened. */
function useLastThatStands(project: Project, stands: boolean): Project {
  const [last, setLast] = useState(project);
  if (stands && project !== last) setLast(project);
  return stands ? project : last;
}
