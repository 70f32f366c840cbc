/** What the person looks at and how: never part of the project file. */
import { create } from 'zustand';
import type { Paper, SheetKind } from '../../main/contract/report';
import type { AngleStyle } from '../../sim/wording/figures';

export const PAGES = ['piece', 'methods', 'verdict', 'joints', 'test-cuts', 'explain'] as const;
export type Page = (typeof PAGES)[number];
export const PAGE_NAMES: Record<Page, string> = {
  piece: 'Piece',
  methods: 'Methods',
  verdict: 'Verdict',
  joints: 'Joints',
  'test-cuts': 'Test cuts',
  explain: 'Explain',
};
export type ThemeChoice = 'system' | 'light' | 'dark';

/** A refusal shown in a dialog: what was tried, and why it was not done. */
export interface Refusal {
  title: string;
  lines: string[];
}

/** What was read off a test piece, until it is dialled. */
export interface BenchReading {
  /** Method and kind of test piece it belongs to; another one starts anew. */
  of: string;
  /** From 1. */
  round: number;
  /** Without its sign; null before it is typed. */
  sizeMm: number | null;
  isOver: boolean;
  /** What the readout shows, from square; null for what it should show. */
  shownDeg: number | null;
}

export interface ViewState {
  page: Page;
  theme: ThemeChoice;
  /** Whether the few sentences on how to begin are shown: from the first start on until they are put away. */
  orientation: 'shown' | 'put away';
  /** Inches as fractions to 1/64. */
  inchFractions: boolean;
  /** Angles in decimal degrees, or in degrees and minutes. */
  angleStyle: AngleStyle;
  /** Names of the methods that are left out of the comparison for now. */
  switchedOff: string[];
  /** Name of the method that the others are held against on the page Methods; null for none. */
  differsFrom: string | null;
  bench: BenchReading | null;
  /** For whom the sheet on the page Explain is. */
  sheetKind: SheetKind;
  paper: Paper;
  refusal: Refusal | null;
  /** The last thing that was done, for the live region. */
  announcement: string;
}

export const useView = create<ViewState>()(() => ({
  page: 'verdict',
  theme: 'system',
  orientation: 'shown',
  inchFractions: false,
  angleStyle: 'decimal',
  switchedOff: [],
  differsFrom: null,
  bench: null,
  sheetKind: 'client',
  paper: 'a4',
  refusal: null,
  announcement: '',
}));

export function showPage(page: Page): void {
  useView.setState({ page });
}

export function showOrientation(): void {
  useView.setState({ orientation: 'shown' });
}

export function announce(announcement: string): void {
  useView.setState({ announcement });
}

export function refuse(title: string, lines: string[]): void {
  useView.setState({ refusal: { title, lines } });
}

export function setSwitchedOff(name: string, off: boolean): void {
  useView.setState(({ switchedOff }) => ({
    switchedOff: off ? [...switchedOff.filter((n) => n !== name), name] : switchedOff.filter((n) => n !== name),
  }));
}

/** A renamed method stays switched off, and stays the one that others are held against. */
export function renameInView(from: string, to: string): void {
  useView.setState(({ switchedOff, differsFrom }) => ({
    switchedOff: switchedOff.map((name) => (name === from ? to : name)),
    differsFrom: differsFrom === from ? to : differsFrom,
  }));
}
