/**
 * The project document as the engine and the pages see it: every key present, every default filled in.
 * Lengths mm, angles degrees, forces newtons, minutes. It follows from the tables of keys.
 */
import type { DocumentOf } from './key';
import { type EXPLAIN, type PROJECT, type RUN, SHOW } from './keys';
import type { ASSEMBLY, BLADE, GUIDE, METHOD, MINUTES, TEST, TILT, WIDTH } from './method-keys';
import type { COSTS, LIMITS, PIECE, STOCK } from './piece-keys';

export { SOURCE_NAMES, type SourceName } from './source-names';

export type Piece = DocumentOf<(typeof PIECE)['keys']>;
export type Insert = NonNullable<Piece['insert']>;
export type Stock = DocumentOf<(typeof STOCK)['keys']>;
export type Limits = DocumentOf<(typeof LIMITS)['keys']>;
export type Costs = DocumentOf<(typeof COSTS)['keys']>;
export type Tilt = DocumentOf<(typeof TILT)['keys']>;
export type Guide = DocumentOf<(typeof GUIDE)['keys']>;
export type Width = DocumentOf<(typeof WIDTH)['keys']>;
export type Blade = DocumentOf<(typeof BLADE)['keys']>;
export type Assembly = DocumentOf<(typeof ASSEMBLY)['keys']>;
export type TestCuts = DocumentOf<(typeof TEST)['keys']>;
export type Minutes = DocumentOf<(typeof MINUTES)['keys']>;
export type Method = DocumentOf<(typeof METHOD)['keys']>;
export type RunSettings = DocumentOf<(typeof RUN)['keys']>;
export type Explain = DocumentOf<(typeof EXPLAIN)['keys']>;
export type Project = DocumentOf<(typeof PROJECT)['keys']>;

export type Grain = Piece['grain'];
export type ShowFace = Piece['showFace'];
export type SizeBy = Piece['size']['by'];
export type Sequence = Method['sequence'];
export type WidthBy = Width['by'];
export type AssemblyBy = Assembly['by'];
export type Ends = Assembly['ends'];
export type TestKind = TestCuts['kind'];
export type Rule = RunSettings['rule'];

export type ExplainPart = keyof (typeof SHOW)['keys'];
/** In the order of the sheet. */
export const EXPLAIN_PARTS = Object.keys(SHOW.keys) as readonly ExplainPart[];
