/** How many rings are simulated and by which rule; folded away, since the file's own settings seldom need a change. */
import { TERMS } from '../../../sim/wording/terms';
import { ChoiceAt, NumberAt } from '../../parts/field-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { useHasProblemUnder } from '../../state/problems';

export function RunInputs() {
  const { trials, seed, rule } = useDocument((state) => state.project.run);
  const hasProblem = useHasProblemUnder('run.');
  return (
    <details className="figure-list" open={hasProblem || undefined}>
      <summary>Simulation</summary>
      <div className="figure-fields">
        <NumberAt path="run.trials" value={trials} onChange={(trials) => edit(withSection('run', { trials }))} />
        <NumberAt path="run.seed" value={seed} onChange={(seed) => edit(withSection('run', { seed }))} />
        <ChoiceAt
          path="run.rule"
          help={TERMS.contactRule.meaning}
          layout="column"
          value={rule}
          onChange={(rule) => edit(withSection('run', { rule }))}
        />
      </div>
    </details>
  );
}
