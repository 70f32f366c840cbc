import { describe, expect, it } from 'vitest';
import { DEFAULT_STOCK, defaultMethod } from '../../../sim/project/defaults';
import { exampleProject } from '../../../sim/project/example';
import type { MethodPart, PresetPart } from '../../../sim/project/preset';
import {
  applyPreset,
  applyStockPreset,
  figureOrigin,
  originText,
  PRESETS,
  presetOf,
  stockFigureOrigin,
  stockPresetOf,
} from '../../../sim/project/presets';
import { validate } from '../../../sim/reading/checks';

const PARTS = Object.keys(PRESETS) as PresetPart[];
const METHOD_PARTS = PARTS.filter((part): part is MethodPart => part !== 'stock');

describe.each(PARTS)('presets of the %s', (part) => {
  const presets = PRESETS[part];

  it('set the same keys, so that one leaves nothing behind of another', () => {
    const keys = presets.map((preset) => Object.keys(preset.figures).join());
    expect(new Set(keys).size).toBe(1);
  });

  it('differ in id, in label and in some figure', () => {
    for (const told of [
      presets.map(({ id }) => id),
      presets.map(({ label }) => label),
      presets.map(({ figures }) => JSON.stringify(Object.values(figures).map((figure) => figure?.value))),
    ]) {
      expect(new Set(told).size).toBe(presets.length);
    }
  });

  it('explain themselves in a sentence and name every published source', () => {
    for (const { explanation, figures } of presets) {
      expect(explanation).toMatch(/^[A-Z].*\.$/);
      for (const figure of Object.values(figures)) {
        if (figure?.standing.kind === 'published') expect(figure.standing.source.length).toBeGreaterThan(20);
      }
    }
  });
});

describe('published figures', () => {
  const figureOf = (part: PresetPart, id: string, key: string): unknown => {
    const preset = PRESETS[part].find((candidate) => candidate.id === id);
    return (preset?.figures as Record<string, { value: unknown }> | undefined)?.[key]?.value;
  };

  it('a square of grade 2 (DIN 875-1: 40 µm on 200 mm)', () => {
    expect(figureOf('guide', 'squaredGauge', 'zeroDeg')).toBeCloseTo((Math.atan(0.04 / 200) * 180) / Math.PI, 4);
  });

  it('a class II tape over a metre (annex MI-008: 0.3 + 0.2·L mm), as a standard deviation', () => {
    expect(figureOf('width', 'pencilLine', 'sharedMm')).toBeCloseTo(0.5 / Math.sqrt(3), 1);
  });

  it('the thickness within a sanded panel (EN 315: 0.6 mm), as a standard deviation', () => {
    expect(figureOf('stock', 'sandedPlywood', 'thicknessSigmaMm')).toBeCloseTo(0.6 / Math.sqrt(12), 2);
  });

  it('the flange of every blade (EN 1870-1: at least a quarter of the diameter)', () => {
    for (const { id } of PRESETS.blade) {
      const [collar, diameter] = ['collarMm', 'diameterMm'].map((key) => Number(figureOf('blade', id, key)));
      expect(collar).toBeGreaterThanOrEqual((diameter ?? Number.NaN) / 4);
    }
  });
});

describe('choosing a preset', () => {
  it('sets its figures, keeps the others, and is then found again', () => {
    for (const part of METHOD_PARTS) {
      for (const { id } of PRESETS[part]) {
        const before = { ...defaultMethod('Way'), tilt: { ...defaultMethod('Way').tilt, aimDeg: 0.07 } };
        const after = applyPreset(before, part, id);
        expect(presetOf(after, part)?.id).toBe(id);
        expect({ ...after, [part]: before[part] }).toEqual(before);
        expect(after.tilt.aimDeg).toBe(0.07);
      }
    }
    for (const { id } of PRESETS.stock) {
      const stock = applyStockPreset({ ...DEFAULT_STOCK, wood: 'ash' }, id);
      expect(stockPresetOf(stock)?.id).toBe(id);
      expect(stock.wood).toBe('ash');
    }
  });

  it('leaves a project that can be computed', () => {
    const project = exampleProject();
    const method = project.methods[0]!;
    for (const part of METHOD_PARTS) {
      for (const { id } of PRESETS[part]) {
        const verdict = validate({ ...project, methods: [applyPreset(method, part, id)] });
        expect(verdict.ok, `${part} ${id}`).toBe(true);
      }
    }
  });

  it('refuses an id there is not', () => {
    expect(() => applyPreset(defaultMethod('Way'), 'tilt', 'sled')).toThrow('"sled" is not a preset of tilt');
  });
});

describe('where a figure comes from', () => {
  const method = applyPreset(defaultMethod('Way'), 'width', 'pencilLine');

  it('is told by the preset', () => {
    expect(originText(figureOrigin(method, 'width.sharedMm'))).toMatch(
      /^published: EU Measuring Instruments Directive/,
    );
    expect(originText(figureOrigin(method, 'width.by'))).toBe('common practice');
    expect(originText(figureOrigin(applyPreset(method, 'tilt', 'draftedAngle'), 'tilt.sharedDeg'))).toBe('assumed');
  });

  it('is the person once the figure is changed, while the others keep their preset', () => {
    const changed = { ...method, width: { ...method.width, perCutMm: 0.4 } };
    expect(presetOf(changed, 'width')).toBeNull();
    expect(figureOrigin(changed, 'width.perCutMm')).toEqual({ kind: 'typed in', nearest: 'Pencil line' });
    expect(figureOrigin(changed, 'width.sharedMm')).toMatchObject({ kind: 'preset', label: 'Pencil line' });
    expect(originText(figureOrigin(changed, 'width.perCutMm'))).toBe('typed in');
  });

  it('is the person where no preset comes near', () => {
    const own = { ...method, guide: { zeroDeg: 1, settingDeg: 2, slotDeg: 3, seatMm: 4, faceMm: 555 } };
    expect(figureOrigin(own, 'guide.zeroDeg')).toEqual({ kind: 'typed in', nearest: null });
  });

  it('is told for the stock too', () => {
    const stock = applyStockPreset(DEFAULT_STOCK, 'sandedPlywood');
    expect(originText(stockFigureOrigin(stock, 'thicknessSigmaMm'))).toMatch(/^published: EN 315/);
    expect(originText(stockFigureOrigin({ ...stock, cupMm: 1 }, 'cupMm'))).toBe('typed in');
  });

  it('refuses a figure that belongs to no part', () => {
    expect(() => figureOrigin(method, 'minutes.setUp')).toThrow('"minutes.setUp" has no presets');
    expect(() => figureOrigin(method, 'stock.cupMm')).toThrow('has no presets');
  });
});
