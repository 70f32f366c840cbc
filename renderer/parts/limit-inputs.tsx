/** How tight is tight: the limits that a piece is judged by. */
import type { Project } from '../../sim/project/document';
import { edit, useDocument } from '../state/document-store';
import { withSection } from '../state/edits';
import { NumberAt } from './number-at';

export function LimitInputs() {
  return (
    <fieldset className="group">
      <legend>How tight is tight</legend>
      <LimitAt limit="showGapMm" label="Widest gap where it shows" />
      <LimitAt limit="hiddenGapMm" label="Widest gap where it is hidden" />
      <LimitAt limit="remedyGapMm" label="Widest gap that can be put right" />
    </fieldset>
  );
}

/** Drawn anew only when its own limit changes. */
function LimitAt({ limit, label }: { limit: keyof Project['limits']; label: string }) {
  const value = useDocument((state) => state.project.limits[limit]);
  return (
    <NumberAt
      path={`limits.${limit}`}
      label={label}
      value={value}
      onChange={(mm) => edit(withSection('limits', { [limit]: mm }))}
    />
  );
}
