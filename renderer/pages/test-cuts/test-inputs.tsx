/** Which method is tested, with what, how often and how well, and what a round costs. */
import type { TestKind } from '../../../sim/project/document';
import { fieldHelp } from '../../../sim/project/fields';
import { figureOrigin, originText } from '../../../sim/project/presets';
import { TEST_KIND_WORDS } from '../../../sim/wording/test-pieces';
import { ChoiceField } from '../../inputs/choice-field';
import { SliderField } from '../../inputs/slider-field';
import { NumberAt, OptionalNumberAt } from '../../parts/field-at';
import { beginGesture, edit, endGesture, useDocument } from '../../state/document-store';
import { withFigure, withMethod, withSection } from '../../state/edits';
import { showMethod } from '../../state/method-shown';
import { useProblemAt } from '../../state/problems';
import { withTestKind } from './choose-kind';
import type { TestedMethod } from './use-test-cuts';

const KINDS = Object.keys(TEST_KIND_WORDS) as TestKind[];
/** More are seldom made; any number can be typed. */
const USUAL_ROUNDS = 6;

const FIGURES = [
  { key: 'readingMm', label: 'Reading is off by' },
  { key: 'stopWhenMm', label: 'Good enough when it reads' },
  { key: 'dialDeg', label: 'Dialling is off by' },
  { key: 'dialShare', label: 'and by this share of it' },
] as const;

interface TestInputsProps {
  index: number;
  tested: TestedMethod | null;
}

export function TestInputs({ index, tested }: TestInputsProps) {
  const methods = useDocument((state) => state.project.methods);
  const method = methods[index];
  const path = `methods[${index}].test`;
  const kindProblem = useProblemAt(`${path}.kind`);
  const roundsProblem = useProblemAt(`${path}.maxRounds`);
  if (!method) return null;
  const { test } = method;
  const refusalOf = (kind: TestKind) => tested?.pieces.find((piece) => piece.kind === kind)?.refusal ?? undefined;
  const set = (key: string, value: number | undefined): void => edit(withFigure(index, 'test', key, value));
  const origin = (key: string): string => originText(figureOrigin(method, `test.${key}`));
  return (
    <>
      <fieldset className="group">
        <legend>Method and test piece</legend>
        <ChoiceField
          label="Method"
          layout="menu"
          value={method.name}
          choices={methods.map(({ name }) => ({ value: name, label: name }))}
          onChange={showMethod}
        />
        <ChoiceField
          label="Test piece"
          layout="column"
          value={test.kind}
          choices={KINDS.map((kind) => ({
            value: kind,
            label: TEST_KIND_WORDS[kind].label,
            note: refusalOf(kind) === undefined ? TEST_KIND_WORDS[kind].explanation : 'Not for this piece.',
          }))}
          problem={kindProblem && (refusalOf(test.kind) ?? kindProblem)}
          onChange={(kind) => edit(withMethod(index, withTestKind(kind)))}
        />
        {test.kind === 'pair' && (
          <OptionalNumberAt
            path={`${path}.armMm`}
            label="Arm it is read over"
            value={test.armMm ?? null}
            onChange={(mm) => set('armMm', mm ?? undefined)}
          />
        )}
      </fieldset>
      <fieldset className="group">
        <legend>How it is done</legend>
        <SliderField
          kind="number"
          label="Test rounds, at most"
          help={fieldHelp(`${path}.maxRounds`)}
          value={test.maxRounds}
          min={1}
          max={USUAL_ROUNDS}
          step={1}
          isDisabled={test.kind === 'none'}
          problem={roundsProblem}
          onChange={(rounds) => set('maxRounds', rounds)}
          onGestureStart={beginGesture}
          onGestureEnd={endGesture}
        />
        {FIGURES.map(({ key, label }) => (
          <NumberAt
            key={key}
            path={`${path}.${key}`}
            label={label}
            origin={origin(key)}
            value={test[key]}
            onChange={(value) => set(key, value)}
          />
        ))}
      </fieldset>
      <RoundCosts index={index} />
    </>
  );
}

function RoundCosts({ index }: { index: number }) {
  const { batch, testStockPerRound } = useDocument((state) => state.project.costs);
  const minutes = useDocument((state) => state.project.methods[index]?.minutes.perTestRound ?? 0);
  return (
    <fieldset className="group">
      <legend>What a round costs</legend>
      <NumberAt
        path={`methods[${index}].minutes.perTestRound`}
        label="Minutes for a round"
        value={minutes}
        onChange={(value) => edit(withFigure(index, 'minutes', 'perTestRound', value))}
      />
      <NumberAt
        path="costs.testStockPerRound"
        label="Wood for a round"
        value={testStockPerRound}
        onChange={(value) => edit(withSection('costs', { testStockPerRound: value }))}
      />
      <NumberAt path="costs.batch" value={batch} onChange={(value) => edit(withSection('costs', { batch: value }))} />
    </fieldset>
  );
}
