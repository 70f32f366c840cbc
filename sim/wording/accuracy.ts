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

function neededText(source: SourceNeeded, { key, needed }: FigureNeeded, display: Display): string {
  if (needed === null) return 'not by this alone';
  const text = figureText(key, needed, display);
  return source.factor !== null && source.factor >= MOST_FACTOR ? `${text} or worse` : text;
}

/** One row a figure, source by source. */
export function accuracyTable(name: string, needed: AccuracyNeeded, display: Display): TextTable {
  const balanced = new Map((needed.balanced ?? []).map((source) => [source.source, source.figures]));
  const rows = needed.sources.flatMap((source) =>
    source.figures.map((figure, k) => {
      const together = balanced.get(source.source)?.find(({ key }) => key === figure.key)?.needed;
      return [
        k === 0 ? SOURCE_WORDS[source.source].label : '',
        fieldOf(figure.key).label,
        figureText(figure.key, figure.now, display, 4),
        neededText(source, figure, display),
        together === undefined || together === null ? '–' : figureText(figure.key, together, display),
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

/** The answer for one method, a sentence each. */
export function accuracySentences({ name, test }: Method, needed: AccuracyNeeded, display: Display): string[] {
  const { wanted, yieldNow, sources, inTheWay, balanced } = needed;
  const now = piecesText(shareOf(needed, yieldNow), 'comes out good', 'come out good');
  if (yieldNow >= wanted) {
    return [`“${name}”: ${now} as it is, and ${wantedText(wanted)} are wanted: nothing has to be better.`];
  }
  const said = [`“${name}”: ${now} as it is; ${wantedText(wanted)} are wanted.`];
  const alone = sources.filter(({ factor }) => factor !== null);
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
  const changed = balanced.filter(({ factor }) => factor < NOTABLY_LESS).map(({ source }) => labelOf(source));
  const which = changed.length > MOST_NAMED ? `${changed.length} sources` : changed.join('; ');
  said.push(`With least effort in all, as under “Together”: ${which}.`);
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
