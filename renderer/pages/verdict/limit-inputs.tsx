/** How tight is tight: the limits that a piece is judged by. */
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';
import { NumberAt } from '../number-at';

export function LimitInputs() {
  const { showGapMm, hiddenGapMm, remedyGapMm } = useDocument((state) => state.project.limits);
  return (
    <fieldset className="group">
      <legend>How tight is tight</legend>
      <NumberAt
        path="limits.showGapMm"
        label="Widest gap where it shows"
        value={showGapMm}
        onChange={(mm) => edit(withSection('limits', { showGapMm: mm }))}
      />
      <NumberAt
        path="limits.hiddenGapMm"
        label="Widest gap where it is hidden"
        value={hiddenGapMm}
        onChange={(mm) => edit(withSection('limits', { hiddenGapMm: mm }))}
      />
      <NumberAt
        path="limits.remedyGapMm"
        label="Widest gap that can be put right"
        value={remedyGapMm}
        onChange={(mm) => edit(withSection('limits', { remedyGapMm: mm }))}
      />
    </fieldset>
  );
}
