/** What a change of the air, or of the moisture itself, does to a project's ring: in either sawing where that matters. */
import { ringGeometry } from '../geometry/ring';
import type { Project } from '../project/document';
import { type Sawing, type SeasonChange, type StaveShrinkage, seasonChange, staveShrinkage } from './bevel-change';
import { equilibriumMoisturePercent } from './moisture';
import { WOODS, type Wood, woodNamed } from './woods';

/** Air before and after, at one temperature. */
export interface AirChange {
  temperatureC: number;
  fromHumidityPercent: number;
  toHumidityPercent: number;
}

/** From heated rooms in winter to a humid summer; our own choice. */
export const ASSUMED_AIR: AirChange = { temperatureC: 20, fromHumidityPercent: 35, toHumidityPercent: 65 };

export interface MoistureChange {
  /** Points of percent; below 0 the wood dries. */
  points: number;
  /** Moisture content before and after, percent; absent where the points were given by themselves. */
  percent?: { before: number; after: number };
}

/** @throws RangeError outside the limits of the moisture equation */
export function moistureChange({ temperatureC, fromHumidityPercent, toHumidityPercent }: AirChange): MoistureChange {
  const before = equilibriumMoisturePercent(temperatureC, fromHumidityPercent);
  const after = equilibriumMoisturePercent(temperatureC, toHumidityPercent);
  return { points: after - before, percent: { before, after } };
}

export interface SawingForecast {
  /** Absent for a sheet, which has no growth rings to lie along. */
  sawing?: Sawing;
  shrinkage: StaveShrinkage;
  change: SeasonChange;
}

export interface SeasonForecast {
  wood: Wood;
  /** The movement of the file's wood is not known, so that of another stands for it. */
  isStandIn: boolean;
  sawings: SawingForecast[];
}

const SAWINGS: readonly Sawing[] = ['flatsawn', 'quartersawn'];

/** @throws RangeError for a change of more than 30 points */
export function seasonForecast({ piece, stock }: Project, points: number): SeasonForecast {
  const named = woodNamed(stock.wood);
  const wood = named ?? woodNamed('other') ?? WOODS[0]!;
  const geometry = ringGeometry(piece);
  const forecast = (sawing: Sawing): SawingForecast => {
    const shrinkage = staveShrinkage(wood.movement, piece.grain, sawing, points);
    return { sawing, shrinkage, change: seasonChange(geometry, shrinkage) };
  };
  if (wood.movement.kind === 'solid') return { wood, isStandIn: named === undefined, sawings: SAWINGS.map(forecast) };
  const { shrinkage, change } = forecast('flatsawn');
  return { wood, isStandIn: false, sawings: [{ shrinkage, change }] };
}
