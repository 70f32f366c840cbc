/** What work and wood cost; in whatever money the person counts. */
import type { Costs } from '../../../sim/project/document';
import { NumberAt } from '../../parts/number-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

const COSTS: readonly { key: keyof Costs; label: string }[] = [
  { key: 'batch', label: 'Good pieces wanted' },
  { key: 'stockPerRing', label: 'Wood for one ring' },
  { key: 'testStockPerRound', label: 'Wood for one test round' },
  { key: 'ratePerHour', label: 'An hour of work' },
  { key: 'remedyMinutes', label: 'Minutes to put a ring right' },
  { key: 'assemblyMinutes', label: 'Minutes to glue up' },
];

export function CostInputs() {
  const costs = useDocument((state) => state.project.costs);
  return (
    <fieldset className="group">
      <legend>Cost</legend>
      {COSTS.map(({ key, label }) => (
        <NumberAt
          key={key}
          path={`costs.${key}`}
          label={label}
          value={costs[key]}
          onChange={(value) => edit(withSection('costs', { [key]: value }))}
        />
      ))}
    </fieldset>
  );
}
