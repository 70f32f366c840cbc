/** The wood: what it is, the strips there are, and how true they are. */
import { applyStockPreset, originText, PRESETS, stockFigureOrigin, stockPresetOf } from '../../../sim/project/presets';
import { ChoiceField } from '../../inputs/choice-field';
import { FieldAt, TextAt } from '../../parts/field-at';
import { STRIPS, TRUENESS } from '../../parts/stock-figures';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

const OWN = 'own';

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
      {STRIPS.map((key) => (
        <FieldAt
          key={key}
          path={`stock.${key}`}
          value={stock[key]}
          onChange={(value) => edit(withSection('stock', { [key]: value }))}
        />
      ))}
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
              <FieldAt
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
