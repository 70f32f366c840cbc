/** How many rings are simulated and by which rule; folded away, since the file's own settings seldom need a change. */
import type { Rule } from '../../../sim/project/document';
import { TERMS } from '../../../sim/wording/terms';
import { ChoiceField } from '../../inputs/choice-field';
import type { Choice } from '../../inputs/field-props';
import { NumberAt } from '../../parts/number-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { useHasProblemUnder } from '../../state/problems';

const RULES: readonly Choice<Rule>[] = [
  { value: 'contact', label: 'Contact', note: 'joints press where they touch' },
  { value: 'touch', label: 'Touch', note: 'quicker; gaps come out too large' },
];

export function RunInputs() {
  const { trials, seed, rule } = useDocument((state) => state.project.run);
  const hasProblem = useHasProblemUnder('run.');
  return (
    <details className="figure-list" open={hasProblem || undefined}>
      <summary>Simulation</summary>
      <div className="figure-fields">
        <NumberAt
          path="run.trials"
          label="Rings for each method"
          value={trials}
          onChange={(trials) => edit(withSection('run', { trials }))}
        />
        <NumberAt path="run.seed" label="Seed" value={seed} onChange={(seed) => edit(withSection('run', { seed }))} />
        <ChoiceField
          label="How joints close"
          help={TERMS.contactRule.meaning}
          layout="column"
          value={rule}
          choices={RULES}
          onChange={(rule) => edit(withSection('run', { rule }))}
        />
      </div>
    </details>
  );
}
