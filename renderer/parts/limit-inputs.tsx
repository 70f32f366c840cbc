/** How tight is tight: the limits that a piece is judged by. */
import type { Limits } from '../../sim/project/document';
import { LIMITS } from '../../sim/project/piece-keys';
import { edit, useDocument } from '../state/document-store';
import { withSection } from '../state/edits';
import { FieldAt } from './field-at';

const KEYS = Object.keys(LIMITS.keys) as (keyof Limits)[];

export function LimitInputs() {
  return (
    <fieldset className="group">
      <legend>How tight is tight</legend>
      {KEYS.map((limit) => (
        <LimitAt key={limit} limit={limit} />
      ))}
    </fieldset>
  );
}

/** Drawn anew only when its own limit changes. */
function LimitAt({ limit }: { limit: keyof Limits }) {
  const value = useDocument((state) => state.project.limits[limit]);
  return (
    <FieldAt path={`limits.${limit}`} value={value} onChange={(mm) => edit(withSection('limits', { [limit]: mm }))} />
  );
}
