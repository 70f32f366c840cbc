/** What each method takes out of the strips. */
import { cutPlanFigures } from '../../../sim/export/piece-figures';
import type { RingGeometry } from '../../../sim/geometry/ring';
import type { Project } from '../../../sim/project/document';
import { lengthText } from '../../../sim/wording/figures';
import { SaveTable } from '../../exports/save-table';
import { ColumnHead } from '../../inputs/explained';
import { MethodLabel } from '../../parts/method-mark';
import { Scrolls } from '../../parts/scrolls';
import { useView } from '../../state/view-store';
import { cutPlan } from './cut-plan';

const TITLE = 'Cuts and strips';

/** @param props.project one whose piece can be made */
export function CutTable({ project, geometry }: { project: Project; geometry: RingGeometry }) {
  const { display, methods, stock } = project;
  const fractions = useView((view) => view.inchFractions);
  const plans = methods.map((method) => ({ name: method.name, ...cutPlan(project, geometry, method) }));
  const length = (mm: number): string => lengthText(mm, display, { uncertaintyMm: 0.1, fractions });
  return (
    <section className="group saved" aria-labelledby="cuts-title">
      <h2 id="cuts-title">{TITLE}</h2>
      <SaveTable what={TITLE} table={() => cutPlanFigures(plans, display)} />
      <Scrolls label="Cuts and strips, table">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Method</th>
              <th scope="col">Cuts</th>
              <ColumnHead head="Strip for one stave" />
              <th scope="col">{stock.stripCount === 1 ? 'Strip needed' : `Each of ${stock.stripCount} strips`}</th>
            </tr>
          </thead>
          <tbody>
            {plans.map(({ name, cuts, pitchMm, stripNeededMm }, index) => (
              <tr key={name}>
                <th scope="row">
                  <MethodLabel index={index} name={name} />
                </th>
                <td>{cuts}</td>
                <td>{length(pitchMm)}</td>
                <td>{length(stripNeededMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolls>
    </section>
  );
}
