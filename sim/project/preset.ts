/** What a preset is: a plain choice that stands for some figures of a method or of the stock. */
import type { Assembly, Blade, Guide, Stock, TestCuts, Tilt, Width } from './document';

/** How far a figure can be trusted before it has been measured in the user's own shop. */
export type Standing = { kind: 'published'; source: string } | { kind: 'common practice' } | { kind: 'assumed' };

export interface Figure<Value> {
  value: Value;
  standing: Standing;
}

/** The groups of keys that have presets. */
export interface PresetParts {
  tilt: Tilt;
  guide: Guide;
  width: Width;
  blade: Blade;
  assembly: Assembly;
  test: TestCuts;
  stock: Stock;
}
export type PresetPart = keyof PresetParts;
/** The parts that belong to a method; the stock belongs to the project. */
export type MethodPart = Exclude<PresetPart, 'stock'>;

export interface Preset<Part extends PresetPart = PresetPart> {
  /** Steady name for code; never shown. */
  id: string;
  label: string;
  explanation: string;
  figures: { readonly [Key in keyof PresetParts[Part]]?: Figure<PresetParts[Part][Key]> };
}

export const published = <const Value>(value: Value, source: string): Figure<Value> => {
  return { value, standing: { kind: 'published', source } };
};
/** Said and done all over the trade, without a source to name. */
export const practice = <const Value>(value: Value): Figure<Value> => {
  return { value, standing: { kind: 'common practice' } };
};
/** Our own guess; to be replaced by a measurement. */
export const assumed = <const Value>(value: Value): Figure<Value> => ({ value, standing: { kind: 'assumed' } });
