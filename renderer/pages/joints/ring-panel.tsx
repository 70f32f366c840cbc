/** One ring with its gaps, the joint that is marked in figures beside it, and all joints as a table. */

import { jointFigures } from '../../../sim/export/joint-figures';
import { NO_GAP_MM } from '../../../sim/geometry/thresholds';
import type { Project } from '../../../sim/project/document';
import type { JointOpening, SingleRing } from '../../../sim/run/single-ring';
import { capital, gapText, limitText } from '../../../sim/wording/figures';
import { betweenText, jointName, jointTable, openingsText, ringSentence, shownGap } from '../../../sim/wording/joints';
import { plainNumber } from '../../../sim/wording/plain-number';
import { ChartFrame } from '../../charts/chart-frame';
import { TextTableView } from '../../charts/text-table';
import { mostExaggeration } from '../../drawing/gap-outline';
import { RingGaps } from '../../drawing/ring-gaps';
import { useRingsToSave } from '../../exports/project-exports';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import type { QuestionOutcome } from '../../state/use-question';

export interface MarkedJoint {
  /** From 0. */
  marked: number;
  onMark: (joint: number) => void;
}

interface RingPanelProps extends MarkedJoint {
  project: Project;
  outcome: QuestionOutcome<SingleRing>;
  exaggeration: number;
  /** The gap that 95 of 100 rings stay under, joint by joint. */
  jointP95Mm: readonly number[];
}

export function RingPanel({ project, outcome, exaggeration, jointP95Mm, marked, onMark }: RingPanelProps) {
  const { piece, display, limits } = project;
  const { answer: ring, isFresh, failure } = outcome;
  // A former ring of another number of sides cannot stand for this one.
  const drawn = ring && ring.joints.length === piece.sides ? ring : null;
  const isOpen = drawn?.closes === true;
  const most = isOpen ? mostExaggeration(piece, drawn.joints) : Number.POSITIVE_INFINITY;
  const used = Math.min(exaggeration, most);
  return (
    <ChartFrame
      title="One ring, joint by joint"
      caption={
        <span className={isFresh ? undefined : 'softened'}>
          {drawn
            ? lengthsOnOneLine(ringSentence(drawn, piece.showFace, display))
            : 'The ring is drawn when all rings are closed.'}{' '}
          {isOpen &&
            (used < exaggeration
              ? `To scale, gaps drawn ${plainNumber(used, 1)} times as wide; any wider and staves would vanish.`
              : `To scale, gaps drawn ${plainNumber(used, 1)} times as wide.`)}
        </span>
      }
      table={<TextTableView table={jointTable(jointP95Mm, drawn, display)} marked={marked} onMark={onMark} />}
      figures={() => jointFigures(jointP95Mm, drawn, display)}
      isDrawn={isOpen}
      moreToSave={[useRingsToSave()]}
    >
      {failure !== null && <p className="problem">{failure}</p>}
      <div className={isFresh ? 'ring-and-joint' : 'ring-and-joint softened'}>
        <div className="ring-place">
          {drawn && isOpen && (
            <RingGaps
              piece={piece}
              limits={limits}
              joints={drawn.joints}
              exaggeration={exaggeration}
              marked={marked}
              onMark={onMark}
              title="Joints of the ring, in plan. Arrow keys go around it."
              wordsFor={(joint) => wordsFor(drawn.joints, joint, project)}
              figure={(mm) => gapText(mm, display).replace(/ (mm|in)$/, '')}
            />
          )}
        </div>
        {drawn && isOpen && <JointCard {...{ project, marked, jointP95Mm }} joints={drawn.joints} />}
      </div>
    </ChartFrame>
  );
}

function nameOf(joint: number, sides: number): string {
  return `${capital(jointName(joint))}, ${betweenText(joint, sides)}`;
}

function wordsFor(joints: readonly JointOpening[], joint: number, { piece, display, limits }: Project): string {
  const opening = joints[joint] ?? { outerMm: 0, innerMm: 0 };
  const over = shownGap(opening, piece.showFace) > limits.showGapMm ? '; over the limit' : '';
  return `${nameOf(joint, joints.length)}: ${openingsText(opening, display)}${over}`;
}

interface JointCardProps {
  project: Project;
  joints: readonly JointOpening[];
  marked: number;
  jointP95Mm: readonly number[];
}

function JointCard({ project, joints, marked, jointP95Mm }: JointCardProps) {
  const { piece, display, limits } = project;
  const opening = joints[marked] ?? { outerMm: 0, innerMm: 0 };
  const p95 = jointP95Mm[marked];
  const isOver = shownGap(opening, piece.showFace) > limits.showGapMm;
  const size = (mm: number): string => (mm < NO_GAP_MM ? 'touches' : gapText(mm, display));
  const shows = (side: 'outside' | 'inside'): string =>
    piece.showFace === side || piece.showFace === 'both' ? 'shows' : 'hidden';
  return (
    <section className="joint-card" aria-label="The joint that is marked">
      <h3>{nameOf(marked, joints.length)}</h3>
      <dl className="settings">
        <div>
          <dt>Outside, {shows('outside')}</dt>
          <dd>{size(opening.outerMm)}</dd>
        </div>
        <div>
          <dt>Inside, {shows('inside')}</dt>
          <dd>{size(opening.innerMm)}</dd>
        </div>
      </dl>
      {isOver && (
        <p className="over-limit">{lengthsOnOneLine(`Over the limit of ${limitText(limits.showGapMm, display)}.`)}</p>
      )}
      {p95 !== undefined && (
        <p className="note">
          {lengthsOnOneLine(`In all rings, 95 of 100 are under ${gapText(p95, display)} at this joint.`)}
        </p>
      )}
      <ul className="drawing-key note">
        <li>
          <svg viewBox="0 0 12 12" aria-hidden="true">
            <circle className="gap-touch" cx="6" cy="6" r="2.5" />
          </svg>
          touches there
        </li>
        <li>
          <svg viewBox="0 0 12 12" aria-hidden="true" className="gap-joint over">
            <path className="gap-space" d="M1 1H11L7 11H5Z" />
          </svg>
          {lengthsOnOneLine(`shows more than ${limitText(limits.showGapMm, display)}`)}
        </li>
      </ul>
    </section>
  );
}
