/** Inside one method: where its gaps come from, joint by joint and source by source, and what would help. */
import { useState } from 'react';
import type { Project } from '../../../sim/project/document';
import type { BudgetAnswer } from '../../../sim/questions/questions';
import type { SingleRing } from '../../../sim/run/single-ring';
import { gapNowSentence, gapOriginSentence } from '../../../sim/wording/gap-origin';
import { touchSentence, widestJoint } from '../../../sim/wording/joints';
import { QuestionMark } from '../../charts/question-panel';
import { suitedExaggeration } from '../../drawing/gap-outline';
import { Explained } from '../../inputs/explained';
import { FailureBoundary } from '../../parts/failure-boundary';
import { lengthsOnOneLine } from '../../parts/lengths-on-one-line';
import { PageFrame } from '../../parts/page-frame';
import { WorkMark } from '../../parts/work-mark';
import { useJointsView } from '../../state/joints-view';
import { useShownProject } from '../../state/shown-project';
import { type QuestionOutcome, useQuestion } from '../../state/use-question';
import { AccuracyPanel } from './accuracy-panel';
import { AimPanel } from './aim-panel';
import { BudgetPanel } from './budget-panel';
import { JointStrip } from './joint-strip';
import './joints.css';
import { ExaggerationInput, MethodChoice, RingChoiceInputs } from './joints-inputs';
import { MouthPanels } from './mouth-panels';
import { RingPanel } from './ring-panel';
import { useBudget } from './use-budget';
import { type LookedAt, type ShownRing, useLookedAt, useShownRing } from './use-looked-at';

export function JointsPage() {
  const project = useShownProject();
  const lookedAt = useLookedAt();
  const shown = useShownRing(lookedAt);
  const budget = useBudget(lookedAt.index);
  const suited = suitedExaggeration(project.piece, project.limits.showGapMm);
  const exaggeration = useJointsView((view) => view.exaggeration) ?? suited;
  const isSoft = !budget.isFresh;
  return (
    <PageFrame
      question={`Where do the gaps of “${lookedAt.method.name}” come from?`}
      answer={<span className={isSoft ? 'softened' : undefined}>{answerOf(budget, project)}</span>}
      beside={
        <p className={isSoft ? 'answer-beside softened' : 'answer-beside'}>
          {budget.answer && lengthsOnOneLine(gapNowSentence(budget.answer.budget, project.display))}
        </p>
      }
      inputs={
        <>
          <MethodChoice index={lookedAt.index} />
          <RingChoiceInputs problem={shown.problem} />
          <ExaggerationInput value={exaggeration} suited={suited} />
        </>
      }
      consequences={
        <>
          <WorkMark />
          <p role="status" className="spoken">
            {budget.standing === 'answered' && budget.answer
              ? gapOriginSentence(budget.answer.budget, project.display)
              : ''}
          </p>
          {lookedAt.failure !== null && <p className="problem">{lookedAt.failure}</p>}
          <Panels {...{ project, lookedAt, shown, budget }} exaggeration={exaggeration > 0 ? exaggeration : suited} />
        </>
      }
    />
  );
}

function answerOf({ answer, standing, failure }: QuestionOutcome<BudgetAnswer>, { display }: Project): string {
  if (answer) return lengthsOnOneLine(gapOriginSentence(answer.budget, display));
  if (standing === 'failed') return `That could not be worked out: ${failure}`;
  return standing === 'stopped' ? 'Stopped before there was an answer.' : 'It is being worked out, source by source.';
}

interface PanelsProps {
  project: Project;
  lookedAt: LookedAt;
  shown: ShownRing;
  budget: QuestionOutcome<BudgetAnswer>;
  exaggeration: number;
}

function Panels({ project, lookedAt, shown, budget, exaggeration }: PanelsProps) {
  const { index, method, result, isFresh } = lookedAt;
  const [chosen, setChosen] = useState<number | null>(null);
  const aim = useQuestion({ kind: 'aim' }, index);
  const jointP95Mm = result?.prediction.jointShowGapP95Mm ?? [];
  const marked = markedJoint(chosen, shown.outcome.answer, project);
  return (
    <>
      <div className="two-charts">
        <FailureBoundary what="drawing of the ring">
          <RingPanel
            project={project}
            outcome={shown.outcome}
            exaggeration={exaggeration}
            jointP95Mm={jointP95Mm}
            marked={marked}
            onMark={setChosen}
          />
        </FailureBoundary>
        {result && (
          <FailureBoundary what="chart of the joints">
            <JointStrip
              project={project}
              assembly={method.assembly}
              methodIndex={index}
              jointP95Mm={jointP95Mm}
              isFresh={isFresh}
              marked={marked}
              onMark={setChosen}
            />
          </FailureBoundary>
        )}
      </div>
      <FailureBoundary what="error budget">
        <BudgetPanel outcome={budget} methodIndex={index} />
      </FailureBoundary>
      <div className="two-charts">
        <FailureBoundary what="chart of the aim">
          <AimPanel project={project} method={method} methodIndex={index} outcome={aim} />
        </FailureBoundary>
        <FailureBoundary what="table of accuracy">
          <AccuracyPanel method={method} methodIndex={index} />
        </FailureBoundary>
      </div>
      {result && (
        <FailureBoundary what="charts of the mouth">
          <MouthPanels project={project} method={method} methodIndex={index} result={result} isFresh={isFresh} />
        </FailureBoundary>
      )}
      <TouchLine methodIndex={index} project={project} />
    </>
  );
}

/** The joint the person chose, else the widest of the ring that is drawn, else none: −1. */
function markedJoint(chosen: number | null, ring: SingleRing | null, { piece }: Project): number {
  if (chosen !== null && chosen < piece.sides) return chosen;
  return ring?.joints.length === piece.sides ? widestJoint(ring.joints, piece.showFace) : -1;
}

function TouchLine({ methodIndex, project }: { methodIndex: number; project: Project }) {
  const outcome = useQuestion({ kind: 'touchExcess' }, methodIndex);
  const { answer, isFresh } = outcome;
  return (
    <section className="group" aria-labelledby="touch-title">
      <h2>
        <span id="touch-title">Touch against contact</span> <Explained term="contactRule" />
      </h2>
      {answer === null ? (
        <QuestionMark outcome={outcome} />
      ) : (
        <p className={isFresh ? undefined : 'softened'}>
          {lengthsOnOneLine(touchSentence(answer.excess, project.display))}{' '}
          {project.run.rule === 'touch' && answer.excess !== null && 'The figures on this page rest on touch.'}
        </p>
      )}
    </section>
  );
}
