/** How good the sources of error would have to be, in words. */

import { type AccuracyNeeded, type FigureNeeded, MOST_FACTOR, type SourceNeeded } from '../decide/accuracy-needed';
import type { SourceKey } from '../errors/source-scale';
import { MM_PER_INCH } from '../geometry/thresholds';
import type { Method, Project, SourceName } from '../project/document';
import { fieldAt } from '../project/fields';
import { withUnit } from '../project/problem';
import type { Share } from '../statistics/estimates';
import { wilson } from '../statistics/wilson';
import { type Display, givenLengthText, givenText, piecesText, shareText } from './figures';
import { SOURCE_WORDS } from './sources';
import { plainText, type TextTable } from './tables';

/** What a figure of a source is called, and its unit. */
export function fieldOf(key: SourceKey): { label: string; unit: string } {
  return fieldAt(key.startsWith('stock.') ? key : `methods[].${key}`) ?? { label: key, unit: '' };
}

/** The name of a source's figure within a sentence: "shared tilt error". */
export function figureWords(key: SourceKey): string {
  const { label } = fieldOf(key);
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** "0.034°", "0.12 mm", "0.005 in": as many digits as a few thousand rings can tell. */
export function figureText(key: SourceKey, value: number, display: Display, digits = 2): string {
  const { unit } = fieldOf(key);
  const [shown, shownUnit] = unit === 'mm' && display === 'inch' ? [value / MM_PER_INCH, 'in'] : [value, unit];
  return withUnit(Number(shown.toPrecision(digits)), shownUnit);
}

const MOST_NAMED = 4;
const NOTABLY_LESS = 0.95;

const labelOf = (source: SourceName): string => SOURCE_WORDS[source].label.toLowerCase();

/** Finer than this nothing is set or measured in a workshop, in the unit of the figure; elsewhere a fiftieth of now. */
const FINEST: Readonly<Record<string, number>> = { mm: 0.002, '°': 0.002 };
const FINEST_PART = 1 / 50;

/** Whether a figure would have to be smaller than can be had. */
function isOutOfReach({ key, now, needed }: FigureNeeded): boolean {
  const unit = fieldOf(key).unit;
  return needed !== null && Math.abs(needed) < Math.min(Math.abs(now) / 2, FINEST[unit] ?? FINEST_PART * Math.abs(now));
}

const OUT_OF_REACH = 'out of reach';

function neededText(source: SourceNeeded, figure: FigureNeeded, display: Display): string {
  const { key, needed } = figure;
  if (needed === null) return 'not by this alone';
  if (isOutOfReach(figure)) return OUT_OF_REACH;
  const text = figureText(key, needed, display);
  return source.factor !== null && source.factor >= MOST_FACTOR ? `${text} or worse` : text;
}

function togetherText(figure: FigureNeeded, display: Display): string {
  if (figure.needed === null) return '–';
  return isOutOfReach(figure) ? OUT_OF_REACH : figureText(figure.key, figure.needed, display);
}

/** One row a figure, source by source. */
export function accuracyTable(name: string, needed: AccuracyNeeded, display: Display): TextTable {
  const balanced = new Map((needed.balanced ?? []).map((source) => [source.source, source.figures]));
  const rows = needed.sources.flatMap((source) =>
    source.figures.map((figure, k) => {
      const together = balanced.get(source.source)?.find(({ key }) => key === figure.key);
      return [
        k === 0 ? SOURCE_WORDS[source.source].label : '',
        fieldOf(figure.key).label,
        figureText(figure.key, figure.now, display, 4),
        neededText(source, figure, display),
        together === undefined ? '–' : togetherText(together, display),
        k === 0 ? shareText(shareOf(needed, source.yieldIfPerfect)) : '',
      ];
    }),
  );
  const alone = needed.yieldNow >= needed.wanted ? 'Alone it may be' : 'Alone it would have to be';
  return { head: [name, 'Figure', 'Now', alone, 'Together', 'Good enough if perfect'], rows };
}

/** A share of the rings that every variant was tried on. */
function shareOf({ trials }: AccuracyNeeded, value: number): Share {
  return wilson(Math.round(value * trials), trials);
}

/** "95 in 100", "99.9 in 100". */
const wantedText = (wanted: number): string => `${Number((100 * wanted).toPrecision(6))} in 100`;

/** The sources by name, where they are few. */
const namedText = (labels: readonly string[]): string =>
  labels.length > MOST_NAMED ? `${labels.length} sources` : labels.join('; ');

/** The answer for one method, a sentence each. */
export function accuracySentences({ name, test }: Method, needed: AccuracyNeeded, display: Display): string[] {
  const { wanted, yieldNow, sources, inTheWay, balanced } = needed;
  const now = piecesText(shareOf(needed, yieldNow), 'comes out good', 'come out good');
  if (yieldNow >= wanted) {
    return [`“${name}”: ${now} as it is, and ${wantedText(wanted)} are wanted: nothing has to be better.`];
  }
  const said = [`“${name}”: ${now} as it is; ${wantedText(wanted)} are wanted.`];
  const alone = sources.filter(({ factor, figures }) => factor !== null && !figures.some(isOutOfReach));
  const ways = alone.map((source) => {
    const [figure] = source.figures;
    if (figure === undefined || figure.needed === null) return labelOf(source.source);
    const [better, worse] = [
      figureText(figure.key, figure.needed, display),
      figureText(figure.key, figure.now, display, 4),
    ];
    return `${labelOf(source.source)} at ${better} in place of ${worse}`;
  });
  said.push(
    ways.length > 0 ? `One alone would do it: ${ways.join('; or ')}.` : 'No single source, made better, would do it.',
  );
  if (balanced === null) {
    said.push('Even without any error too few would come out good: look at the limits, the insert and the aim.');
    return said;
  }
  if (inTheWay.length > 0) {
    said.push(`In the way whatever else is made better: ${inTheWay.map(labelOf).join('; ')}.`);
  }
  const beyond = balanced.filter(({ figures }) => figures.some(isOutOfReach)).map(({ source }) => labelOf(source));
  if (beyond.length > 0) {
    said.push(
      `All made better together, it is still out of reach: ${namedText(beyond)} would have to be finer than a workshop can set or measure.`,
      'Change the method there, or how the ring is closed, or widen the limits.',
    );
    return said;
  }
  const changed = balanced.filter(({ factor }) => factor < NOTABLY_LESS).map(({ source }) => labelOf(source));
  said.push(`With least effort in all, as under “Together”: ${namedText(changed)}.`);
  if (test.kind !== 'none' && test.maxRounds > 0) {
    const reading = givenLengthText(test.readingMm, display);
    said.push(`Its test cuts are read and dialled no better than now, ${reading} and ${givenText(test.dialDeg)}° off.`);
  }
  return said;
}

export function accuracyTexts(needed: AccuracyNeeded, { display }: Project, method: Method): string[] {
  const sentences = accuracySentences(method, needed, display).join('\n');
  return needed.sources.length === 0
    ? [sentences]
    : [sentences, plainText(accuracyTable(method.name, needed, display))];
}
