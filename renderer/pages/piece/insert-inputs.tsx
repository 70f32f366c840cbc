/** What must fit inside, if anything must. */
import { ringGeometry } from '../../../sim/geometry/ring';
import { NumberAt } from '../../parts/field-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

/** What a new insert starts with: a little less than what would just fit. */
const FIRST_CLEARANCE_MM = 3;
const FIRST_SPARE_MM = 2;

export function InsertInputs() {
  const piece = useDocument((state) => state.project.piece);
  const { insert } = piece;
  const toggle = (wanted: boolean): void => {
    const room = ringGeometry(piece).clearOpeningNarrowMm - FIRST_CLEARANCE_MM - FIRST_SPARE_MM;
    const first = { diameterMm: Math.max(1, Math.floor(room)), clearanceMm: FIRST_CLEARANCE_MM };
    edit(withSection('piece', { insert: wanted ? first : undefined }));
  };
  return (
    <fieldset className="group">
      <legend>What must fit inside</legend>
      <label className="switch">
        <input type="checkbox" checked={insert !== undefined} onChange={(event) => toggle(event.target.checked)} />
        Something round must fit inside
      </label>
      {insert && (
        <>
          <NumberAt
            path="piece.insert.diameterMm"
            value={insert.diameterMm}
            onChange={(diameterMm) => edit(withSection('piece', { insert: { ...insert, diameterMm } }))}
          />
          <NumberAt
            path="piece.insert.clearanceMm"
            value={insert.clearanceMm}
            onChange={(clearanceMm) => edit(withSection('piece', { insert: { ...insert, clearanceMm } }))}
          />
        </>
      )}
    </fieldset>
  );
}
