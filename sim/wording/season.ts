/** What the seasons do to a ring, in words. */

import { ringGeometry } from '../geometry/ring';
import { NO_GAP_MM } from '../geometry/thresholds';
import type { Piece, Project } from '../project/document';
import type { AirChange, MoistureChange, SawingForecast, SeasonForecast } from '../season/forecast';
import type { MovementStanding } from '../season/woods';
import { signedText } from './differences';
import { angleText, type Display, gapText, lengthText, limitText } from './figures';
import type { TextTable } from './tables';

const SAWING_WORDS = { flatsawn: 'Flatsawn', quartersawn: 'Quartersawn' } as const;

const titleOf = ({ sawing }: SawingForecast): string => (sawing === undefined ? 'Sheet' : SAWING_WORDS[sawing]);

/** "The wood goes from 6.9 % to 12.0 % moisture, 5.0 points." */
export function moistureSentence({ points, percent }: MoistureChange, air: AirChange | undefined): string {
  const change = `${signedText(points, 1)} points of moisture`;
  if (percent === undefined || air === undefined) {
    return `The wood ${points < 0 ? 'dries' : points > 0 ? 'takes up moisture' : 'stays as it is'}: ${change}.`;
  }
  const [from, to] = [air.fromHumidityPercent, air.toHumidityPercent];
  return (
    `Air at ${air.temperatureC} °C going from ${from} % to ${to} % humidity takes the wood, in the long run, from ` +
    `${percent.before.toFixed(1)} % to ${percent.after.toFixed(1)} %: ${change}.`
  );
}

function standingText(standing: MovementStanding): string {
  switch (standing.kind) {
    case 'published':
      return `Its movement is published: ${standing.source}.`;
    case 'from memory':
      return `Its movement is written down from memory of ${standing.source}.`;
    case 'common practice':
      return 'Its movement is common practice.';
    case 'assumed':
      return 'Its movement is assumed.';
  }
}

/** Which wood is computed with, and what that rests on. */
export function woodSentences({ wood, isStandIn }: SeasonForecast, named: string): string {
  const known = isStandIn
    ? `How much “${named}” moves is not known here.`
    : wood.id === 'other'
      ? 'The wood is not named.'
      : `Computed for ${wood.label.toLowerCase()}.`;
  return [known, ...(wood.remark === undefined ? [standingText(wood.standing)] : [wood.remark])].join(' ');
}

/** One column for each way of sawing. */
export function seasonTable({ sawings }: SeasonForecast, { piece, display }: Project): TextTable {
  const row = (label: string, cell: (forecast: SawingForecast) => string): string[] => [label, ...sawings.map(cell)];
  const angle = (deg: number) => angleText(deg, 'decimal', 3);
  const gain = (mm: number) => (mm > 0 ? `+${lengthText(mm, display)}` : lengthText(mm, display));
  return {
    head: ['After the change', ...sawings.map(titleOf)],
    rows: [
      row('Tilt that is in the wood', ({ change }) => `${angle(change.bevelDeg)} → ${angle(change.bevelAfterDeg)}`),
      row('Swing that is in it', ({ change }) => `${angle(change.crosscutDeg)} → ${angle(change.crosscutAfterDeg)}`),
      row('Angles of the ring in all', ({ change }) => `${signedText(change.ringSumDeg, 2)}°`),
      row('Gap of each joint, outside', ({ change }) => gapText(change.outsideGapMm, display)),
      row('Gap of each joint, inside', ({ change }) => gapText(change.insideGapMm, display)),
      row('Clear opening, joints held', ({ change }) => gain(change.clearOpeningGainMm)),
      ...(piece.insert === undefined
        ? []
        : [row('Room for the insert', ({ change }) => roomText(piece, change.clearOpeningGainMm, display))]),
    ],
  };
}

/** What a ring without error leaves around the insert, on the diameter. */
function roomText(piece: Piece, gainMm: number, display: Display): string {
  const { diameterMm = 0, clearanceMm = 0 } = piece.insert ?? {};
  const left = ringGeometry(piece).clearOpeningNarrowMm + gainMm - diameterMm;
  if (left < 0) return 'none: it is pinched';
  return `${lengthText(left, display)} (${lengthText(clearanceMm, display)} wanted)`;
}

/** One sentence for each way of sawing. */
export function seasonSentences({ sawings }: SeasonForecast, { piece, limits, display }: Project): string[] {
  return sawings.map((forecast) => {
    const { outsideGapMm, insideGapMm, jointOpeningMm } = forecast.change;
    const [seen, behind] = piece.showFace === 'inside' ? [insideGapMm, outsideGapMm] : [outsideGapMm, insideGapMm];
    const widest = Math.max(seen, behind);
    if (widest < NO_GAP_MM) return `${titleOf(forecast)}: the joints stay as they are.`;
    const shows = piece.showFace === 'both' || seen > 0.99 * widest;
    const limit = shows ? limits.showGapMm : limits.hiddenGapMm;
    const away = jointOpeningMm > 0;
    const flat = away ? 'at the outer corners' : 'at the inner corners';
    const where = piece.slopeDeg === 90 ? flat : away ? 'on the outside' : 'on the inside';
    return (
      `${titleOf(forecast)}: were the joints free to move, each would open by up to ${gapText(widest, display)} ` +
      `${where}, where it ${shows ? 'shows' : 'is hidden'}: ${widest > limit ? 'over' : 'within'} the ` +
      `${limitText(limit, display)} allowed there.`
    );
  });
}
