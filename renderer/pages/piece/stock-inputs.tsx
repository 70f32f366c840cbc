/** The wood: what it is, the strips there are, and how true they are. */
import type { Stock } from '../../../sim/project/document';
import { applyStockPreset, originText, PRESETS, stockFigureOrigin, stockPresetOf } from '../../../sim/project/presets';
import { ChoiceField } from '../../inputs/choice-field';
import { NumberAt, OptionalNumberAt, TextAt } from '../../parts/field-at';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

const OWN = 'own';
const TRUENESS = ['thicknessSigmaMm', 'cupMm', 'edgeTaperDeg'] as const satisfies readonly (keyof Stock)[];

export function StockInputs() {
  const stock = useDocument((state) => state.project.stock);
  const preset = stockPresetOf(stock);
  const choices = PRESETS.stock.map(({ id, label }) => ({ value: id, label }));
  const choose = (id: string): void => {
    if (id !== OWN) edit((project) => ({ ...project, stock: applyStockPreset(project.stock, id) }));
  };
  return (
    <fieldset className="group">
      <legend>Stock</legend>
      <TextAt
        path="stock.wood"
        value={stock.wood}
        spellCheck={false}
        onChange={(wood) => edit(withSection('stock', { wood }))}
      />
      <OptionalNumberAt
        path="stock.stripLengthMm"
        value={stock.stripLengthMm ?? null}
        onChange={(mm) => edit(withSection('stock', { stripLengthMm: mm ?? undefined }))}
      />
      <NumberAt
        path="stock.stripCount"
        value={stock.stripCount}
        onChange={(stripCount) => edit(withSection('stock', { stripCount }))}
      />
      <NumberAt
        path="stock.trimMm"
        value={stock.trimMm}
        onChange={(trimMm) => edit(withSection('stock', { trimMm }))}
      />
      <NumberAt
        path="stock.holdMm"
        value={stock.holdMm}
        onChange={(holdMm) => edit(withSection('stock', { holdMm }))}
      />
      <div className="method-part">
        <ChoiceField
          label="How it was prepared"
          layout="menu"
          value={preset?.id ?? OWN}
          choices={preset ? choices : [...choices, { value: OWN, label: 'Own figures' }]}
          onChange={choose}
        />
        <p className="note">{preset?.explanation ?? 'Figures of your own.'}</p>
        <details className="figure-list">
          <summary>Figures</summary>
          <div className="figure-fields">
            {TRUENESS.map((key) => (
              <NumberAt
                key={key}
                path={`stock.${key}`}
                value={stock[key]}
                origin={originText(stockFigureOrigin(stock, key))}
                onChange={(value) => edit(withSection('stock', { [key]: value }))}
              />
            ))}
          </div>
        </details>
      </div>
    </fieldset>
  );
}
