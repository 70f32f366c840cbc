/** What is made, and how the saw is set for it: drawing, settings, strips and cautions follow every change at once. */
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
import { useShownProject } from '../../state/shown-project';
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
  const shown = useShownProject();
  const isHeld = problems.length > 0;
  // A piece that stands is drawn, whatever is wrong with a method.
  const drawn = isHeld ? shown : project;
  const { piece, display } = drawn;
  const drawing = { piece, display, fractions, angleStyle };
  const geometry = ringGeometry(piece);
  return (
    <PageFrame
      question="What do you make, and how is the saw set for it?"
      answer={settingSentence(drawn, angleStyle, fractions)}
      problems={problems}
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
          <ShortHold project={drawn} isSpoken />
          <Warnings project={project} />
          <div className="piece-consequences">
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
              {isHeld ? <NoSettings /> : <SawSettings geometry={geometry} />}
              <FailureBoundary what="drawing of a stave">
                <SavedDrawing title="One stave">
                  <StaveDrawing {...drawing} />
                </SavedDrawing>
              </FailureBoundary>
            </div>
          </div>
          <CutTable project={drawn} geometry={geometry} />
          <FailureBoundary what="order of the cuts">
            <CuttingOrder project={drawn} />
          </FailureBoundary>
          <FailureBoundary what="part on the seasons">
            <Seasons project={drawn} />
          </FailureBoundary>
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

/** The saw is never set by the figures of another piece. */
function NoSettings() {
  return (
    <section className="group" aria-labelledby="no-saw-title">
      <h2 id="no-saw-title">Saw settings</h2>
      <p>They cannot be worked out yet. The drawings are of the piece as it last could be made.</p>
    </section>
  );
}
