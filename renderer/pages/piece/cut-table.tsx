/** What each method takes out of the strips. */
import type { RingGeometry } from '../../../sim/geometry/ring';
import { lengthText } from '../../../sim/wording/figures';
import { MethodLabel } from '../../app/method-mark';
import { Scrolls } from '../../app/scrolls';
import { useDocument } from '../../state/document-store';
import { cutPlan } from './cut-plan';

export function CutTable({ geometry }: { geometry: RingGeometry }) {
  const project = useDocument((state) => state.project);
  const { display, methods, stock } = project;
  const length = (mm: number): string => lengthText(mm, display, { uncertaintyMm: 0.1 });
  return (
    <section className="group" aria-labelledby="cuts-title">
      <h2 id="cuts-title">Cuts and strips</h2>
      <Scrolls label="Cuts and strips, table">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Method</th>
              <th scope="col">Cuts</th>
              <th scope="col">Strip for one stave</th>
              <th scope="col">{stock.stripCount === 1 ? 'Strip needed' : `Each of ${stock.stripCount} strips`}</th>
            </tr>
          </thead>
          <tbody>
            {methods.map((method, index) => {
              const plan = cutPlan(project, geometry, method);
              return (
                <tr key={method.name}>
                  <th scope="row">
                    <MethodLabel index={index} name={method.name} />
                  </th>
                  <td>{plan.cuts}</td>
                  <td>{length(plan.pitchMm)}</td>
                  <td>{length(plan.stripNeededMm)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scrolls>
    </section>
  );
}
