/** Every figure of a method with where it comes from, one table for each choice it is put together from. */
import type { Method, Stock } from '../../sim/project/document';
import { fieldAt, labelOnPage, optionLabel } from '../../sim/project/fields';
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
import { angleText, type Display, lengthText } from '../../sim/wording/figures';
import { givenMinutesText } from '../../sim/wording/report';
import {
  type FigureField,
  MINUTES_KEYS,
  PARTS_AFTER_SEQUENCE,
  PARTS_BEFORE_SEQUENCE,
  type Part,
} from '../parts/method-parts';
import type { SheetTable } from './sheet-table';

const FIGURES = { head: ['Figure', 'Value', 'Where it comes from'], wordColumns: 3, goesOn: true };
const STRIP_FIGURES = ['stripLengthMm', 'stripCount', 'trimMm', 'holdMm'] as const;
const TRUENESS = ['thicknessSigmaMm', 'cupMm', 'edgeTaperDeg'] as const;
const ANGLE_DECIMALS = 4;

function valueText(path: string, value: unknown, display: Display): string {
  const unit = fieldAt(path)?.unit ?? '';
  if (typeof value !== 'number') return String(value);
  if (unit === 'mm') return lengthText(value, display);
  if (unit === 'min') return givenMinutesText(value);
  return unit === '°' ? angleText(value, 'decimal', ANGLE_DECIMALS) : withUnit(value, unit);
}

const labelOf = (path: string): string => fieldAt(path)?.label ?? path;

function figureRow(method: Method, { name }: Part, field: FigureField, display: Display): string[] {
  const { key, about } = field;
  const value: unknown = Object.entries(method[name]).find(([found]) => found === key)?.[1];
  const origin = originText(figureOrigin(method, `${name}.${key}`));
  if (about.kind === 'choice') return [labelOnPage(about), optionLabel(about, String(value)), origin];
  if (value === null || value === undefined) return [about.label, about.whenEmpty ?? '–', origin];
  return [about.label, valueText(`methods[].${name}.${key}`, value, display), origin];
}

function partTable(method: Method, part: Part, display: Display): SheetTable {
  const preset = presetOf(method, part.name);
  const near = nearestPreset(method, part.name);
  const choice = preset?.label ?? (near === null ? 'figures of its own' : `${near.label}, figures changed`);
  return {
    caption: `${part.question}: ${choice}`,
    ...FIGURES,
    rows: part.figures.map((field) => figureRow(method, part, field, display)),
  };
}

export function methodFigures(method: Method, display: Display): SheetTable[] {
  const { sequence, wideFace } = METHOD.keys;
  return [
    ...PARTS_BEFORE_SEQUENCE.map((part) => partTable(method, part, display)),
    {
      caption: `${sequence.label}: ${optionLabel(sequence, method.sequence)}`,
      ...FIGURES,
      rows: [
        [labelOnPage(wideFace), optionLabel(wideFace, method.wideFace), 'typed in'],
        ...MINUTES_KEYS.map((key) => {
          const path = `methods[].minutes.${key}`;
          return [labelOf(path), valueText(path, method.minutes[key], display), 'typed in'];
        }),
      ],
    },
    ...PARTS_AFTER_SEQUENCE.map((part) => partTable(method, part, display)),
  ];
}

/** The strips there are, and how true they are. */
export function stockFigures(stock: Stock, display: Display): SheetTable[] {
  const preset = stockPresetOf(stock);
  const stockRow = (key: keyof Stock, origin: string): string[] => {
    const text =
      stock[key] === undefined
        ? (fieldAt(`stock.${key}`)?.whenEmpty ?? '–')
        : valueText(`stock.${key}`, stock[key], display);
    return [labelOf(`stock.${key}`), text, origin];
  };
  return [
    { caption: 'Strips', ...FIGURES, rows: STRIP_FIGURES.map((key) => stockRow(key, 'typed in')) },
    {
      caption: `How the stock was prepared: ${preset?.label ?? 'figures of its own'}`,
      ...FIGURES,
      rows: TRUENESS.map((key) => stockRow(key, originText(stockFigureOrigin(stock, key)))),
    },
  ];
}
