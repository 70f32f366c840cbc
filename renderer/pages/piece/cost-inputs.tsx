/** What work and wood cost; in whatever money the person counts. */
import type { Costs } from '../../../sim/project/document';
import { COSTS } from '../../../sim/project/piece-keys';
import { FieldAt } from '../../parts/field-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

const KEYS = Object.keys(COSTS.keys) as (keyof Costs)[];

export function CostInputs() {
  const costs = useDocument((state) => state.project.costs);
  return (
    <fieldset className="group">
      <legend>Cost</legend>
      {KEYS.map((key) => (
        <FieldAt
          key={key}
          path={`costs.${key}`}
          value={costs[key]}
          onChange={(value) => edit(withSection('costs', { [key]: value }))}
        />
      ))}
    </fieldset>
  );
}
