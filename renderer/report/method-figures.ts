/** Every figure of a method with where it comes from, one table for each choice it is put together from. */
import type { Method, Stock } from '../../sim/project/document';
import { keyAt, labelOnPage, optionLabel } from '../../sim/project/fields';
import { METHOD } from '../../sim/project/method-keys';
import {
  figureOrigin,
  nearestPreset,
  originText,
  presetOf,
  stockFigureOrigin,
  stockPresetOf,
} from '../../sim/project/presets';
import { withUnit } from '../../sim/project/problem';
import { type Display, givenLengthText, givenText } from '../../sim/wording/figures';
import { MINUTES_KEYS, PARTS_AFTER_SEQUENCE, PARTS_BEFORE_SEQUENCE, type Part } from '../parts/method-parts';
import { STRIPS, TRUENESS } from '../parts/stock-figures';
import type { SheetTable } from './sheet-table';

const FIGURES = { head: ['Figure', 'Value', 'Where it comes from'], wordColumns: 3, goesOn: true };

/** What it is called, what it is, where it comes from. @param value absent, or null, where it is left empty */
function figureRow(path: string, value: unknown, origin: string, display: Display): string[] {
  const key = keyAt(path);
  if (key?.kind === 'choice') return [labelOnPage(key), optionLabel(key, String(value)), origin];
  const { label = path, unit = '', whenEmpty = '–' } = key?.kind === 'number' ? key : {};
  return [label, typeof value === 'number' ? numberText(value, unit, display) : whenEmpty, origin];
}

function numberText(value: number, unit: string, display: Display): string {
  return unit === 'mm' ? givenLengthText(value, display) : withUnit(givenText(value), unit);
}

function partTable(method: Method, part: Part, display: Display): SheetTable {
  const preset = presetOf(method, part.name);
  const near = nearestPreset(method, part.name);
  const choice = preset?.label ?? (near === null ? 'figures of its own' : `${near.label}, figures changed`);
  const values = new Map<string, unknown>(Object.entries(method[part.name]));
  return {
    caption: `${part.question}: ${choice}`,
    ...FIGURES,
    rows: part.figures.map((key) => {
      const origin = originText(figureOrigin(method, `${part.name}.${key}`));
      return figureRow(`methods[].${part.name}.${key}`, values.get(key), origin, display);
    }),
  };
}

export function methodFigures(method: Method, display: Display): SheetTable[] {
  const { sequence } = METHOD.keys;
  return [
    ...PARTS_BEFORE_SEQUENCE.map((part) => partTable(method, part, display)),
    {
      caption: `${sequence.label}: ${optionLabel(sequence, method.sequence)}`,
      ...FIGURES,
      rows: [
        figureRow('methods[].wideFace', method.wideFace, 'typed in', display),
        ...MINUTES_KEYS.map((key) => {
          return figureRow(`methods[].minutes.${key}`, method.minutes[key], 'typed in', display);
        }),
      ],
    },
    ...PARTS_AFTER_SEQUENCE.map((part) => partTable(method, part, display)),
  ];
}

/** The strips there are, and how true they are. */
export function stockFigures(stock: Stock, display: Display): SheetTable[] {
  const preset = stockPresetOf(stock);
  const stockRow = (key: keyof Stock, origin: string) => figureRow(`stock.${key}`, stock[key], origin, display);
  return [
    { caption: 'Strips', ...FIGURES, rows: STRIPS.map((key) => stockRow(key, 'typed in')) },
    {
      caption: `How the stock was prepared: ${preset?.label ?? 'figures of its own'}`,
      ...FIGURES,
      rows: TRUENESS.map((key) => stockRow(key, originText(stockFigureOrigin(stock, key)))),
    },
  ];
}
