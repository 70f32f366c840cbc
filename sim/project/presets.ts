/** The plain choices a method is put together from, and where each of its figures comes from. */
import { BLADE_PRESETS, GUIDE_PRESETS, TILT_PRESETS, WIDTH_PRESETS } from './cutting-presets';
import type { Method, Stock } from './document';
import type { MethodPart, Preset, PresetPart, PresetParts, Standing } from './preset';
import { ASSEMBLY_PRESETS, STOCK_PRESETS, TEST_PRESETS } from './ring-presets';

export const PRESETS: { readonly [Part in PresetPart]: readonly Preset<Part>[] } = {
  tilt: TILT_PRESETS,
  guide: GUIDE_PRESETS,
  width: WIDTH_PRESETS,
  blade: BLADE_PRESETS,
  assembly: ASSEMBLY_PRESETS,
  test: TEST_PRESETS,
  stock: STOCK_PRESETS,
};

/** `nearest` is the preset a figure was most likely started from; `typed in` when the figure differs from it. */
export type FigureOrigin =
  | { kind: 'preset'; label: string; standing: Standing }
  | { kind: 'typed in'; nearest: string | null };

function keysOf<Part extends PresetPart>(preset: Preset<Part>): (keyof PresetParts[Part])[] {
  return Object.keys(preset.figures) as (keyof PresetParts[Part])[];
}

function withPreset<Part extends PresetPart>(part: Part, figures: PresetParts[Part], id: string): PresetParts[Part] {
  const preset = PRESETS[part].find((candidate) => candidate.id === id);
  if (preset === undefined) throw new RangeError(`"${id}" is not a preset of ${part}`);
  const changed = { ...figures };
  for (const key of keysOf<Part>(preset)) {
    const figure = preset.figures[key];
    if (figure !== undefined) changed[key] = figure.value;
  }
  return changed;
}

/** The share of a preset's figures that stand in `figures` as the preset has them, 0…1. */
function agreement<Part extends PresetPart>(preset: Preset<Part>, figures: PresetParts[Part]): number {
  const keys = keysOf<Part>(preset);
  return keys.filter((key) => preset.figures[key]?.value === figures[key]).length / keys.length;
}

function exactly<Part extends PresetPart>(part: Part, figures: PresetParts[Part]): Preset<Part> | null {
  return PRESETS[part].find((preset) => agreement<Part>(preset, figures) === 1) ?? null;
}

/** The preset most of whose figures still stand; null when none has more than half. */
function nearest<Part extends PresetPart>(part: Part, figures: PresetParts[Part]): Preset<Part> | null {
  let best: Preset<Part> | null = null;
  let most = 0.5;
  for (const preset of PRESETS[part]) {
    const share = agreement<Part>(preset, figures);
    if (share <= most) continue;
    best = preset;
    most = share;
  }
  return best;
}

function originIn<Part extends PresetPart>(part: Part, figures: PresetParts[Part], key: string): FigureOrigin {
  const preset = nearest(part, figures);
  if (preset === null) return { kind: 'typed in', nearest: null };
  const known = keysOf<Part>(preset).find((candidate) => candidate === key);
  const figure = known === undefined ? undefined : preset.figures[known];
  if (known === undefined || figure === undefined || figure.value !== figures[known]) {
    return { kind: 'typed in', nearest: preset.label };
  }
  return { kind: 'preset', label: preset.label, standing: figure.standing };
}

/** The method with one part set as the preset says; what the preset does not set stays. Throws RangeError for an unknown id. */
export function applyPreset(method: Method, part: MethodPart, presetId: string): Method {
  return { ...method, [part]: withPreset(part, method[part], presetId) };
}

export function applyStockPreset(stock: Stock, presetId: string): Stock {
  return withPreset('stock', stock, presetId);
}

/** The preset that every figure of the part agrees with, else null. */
export function presetOf(method: Method, part: MethodPart): Preset<MethodPart> | null {
  return exactly<MethodPart>(part, method[part]);
}

/** The preset that the part was most likely started from, its figures changed or not; null when none comes near. */
export function nearestPreset(method: Method, part: MethodPart): Preset<MethodPart> | null {
  return nearest<MethodPart>(part, method[part]);
}

export function stockPresetOf(stock: Stock): Preset<'stock'> | null {
  return exactly('stock', stock);
}

/** `keyPath` inside the method, e.g. `tilt.sharedDeg`. Throws RangeError when its first word is not a part with presets. */
export function figureOrigin(method: Method, keyPath: string): FigureOrigin {
  const [part = '', key = ''] = keyPath.split('.');
  if (!Object.hasOwn(PRESETS, part) || part === 'stock') throw new RangeError(`"${keyPath}" has no presets`);
  return originIn(part as MethodPart, method[part as MethodPart], key);
}

/** `key` inside the stock, e.g. `cupMm`. */
export function stockFigureOrigin(stock: Stock, key: string): FigureOrigin {
  return originIn('stock', stock, key);
}

const STANDING_WORDS = { 'common practice': 'common practice', assumed: 'assumed' } as const;

/** "assumed", "common practice", "published: …", "typed in". */
export function originText(origin: FigureOrigin): string {
  if (origin.kind === 'typed in') return 'typed in';
  const { standing } = origin;
  return standing.kind === 'published' ? `published: ${standing.source}` : STANDING_WORDS[standing.kind];
}
