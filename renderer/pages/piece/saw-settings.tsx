/** How the saw is set, large, and what else the ring measures. */
import { geometryFigures } from '../../../sim/export/piece-figures';
import type { RingGeometry } from '../../../sim/geometry/ring';
import { angleText } from '../../../sim/wording/figures';
import { geometryTable } from '../../../sim/wording/tables';
import { SaveTable } from '../../exports/save-table';
import { Explained } from '../../inputs/explained';
import { useDocument } from '../../state/document-store';
import { useView } from '../../state/view-store';

/** Rows of the table that the large figures say already. */
const SAID_LARGE = 3;

export function SawSettings({ geometry }: { geometry: RingGeometry }) {
  const display = useDocument((state) => state.project.display);
  const fractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  const angle = (deg: number): string => angleText(deg, angleStyle);
  const { rows } = geometryTable(geometry, display, fractions);
  return (
    <section className="group saved" aria-labelledby="saw-title">
      <h2>
        <span id="saw-title">Saw settings</span> <Explained term="tiltAndSwing" />
      </h2>
      <SaveTable what="Saw settings" table={() => geometryFigures(geometry, display)} />
      <dl className="settings">
        <div>
          <dt>Blade tilt from square</dt>
          <dd>{angle(geometry.bevelDeg)}</dd>
          <dd className="note">{angle(90 - geometry.bevelDeg)} from the table</dd>
        </div>
        <div>
          <dt>Gauge swing from square</dt>
          <dd>{angle(geometry.crosscutDeg)}</dd>
          <dd className="note">{angle(90 - geometry.crosscutDeg)} from the blade</dd>
        </div>
      </dl>
      <table className="figures">
        <tbody>
          {rows.slice(SAID_LARGE).map(([what, figure]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{figure}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
