/** `ringtrue season`: what a change of moisture does to the joints. */

import type { StaveShrinkage } from '../../sim/season/bevel-change';
import { type AirChange, ASSUMED_AIR, moistureChange, seasonForecast } from '../../sim/season/forecast';
import { AIR_LIMITS } from '../../sim/season/moisture';
import { moistureSentence, seasonSentences, seasonTable, woodSentences } from '../../sim/wording/season';
import { plainText } from '../../sim/wording/tables';
import { type Arguments, decimalNumber, type OptionKinds, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { titleTexts } from './predict';
import { Refusal } from './refusal';
import type { CommandIo } from './streams';

const SEASON_OPTIONS: OptionKinds = {
  json: 'flag',
  points: 'value',
  temperature: 'value',
  'from-humidity': 'value',
  'to-humidity': 'value',
};

const MOST_POINTS = 30;

const closed = ({ from, to }: { from: number; to: number }) => ({ from, to, open: false, whole: false });

function airWanted(given: Arguments): AirChange {
  const { temperatureC, humidityPercent } = AIR_LIMITS;
  const humidity = (name: string) => decimalNumber(given, name, closed(humidityPercent), '%');
  return {
    temperatureC: decimalNumber(given, 'temperature', closed(temperatureC), '°C') ?? ASSUMED_AIR.temperatureC,
    fromHumidityPercent: humidity('from-humidity') ?? ASSUMED_AIR.fromHumidityPercent,
    toHumidityPercent: humidity('to-humidity') ?? ASSUMED_AIR.toHumidityPercent,
  };
}

const AIR_OPTIONS = ['temperature', 'from-humidity', 'to-humidity'];

export async function season(args: readonly string[], io: CommandIo): Promise<void> {
  const given = readArguments('season', args, SEASON_OPTIONS, 1);
  const points = decimalNumber(given, 'points', closed({ from: -MOST_POINTS, to: MOST_POINTS }), 'points');
  const air = points === undefined ? airWanted(given) : undefined;
  const both = points === undefined ? undefined : AIR_OPTIONS.find((name) => given.values.has(name));
  if (both !== undefined) {
    throw new Refusal([`Option --${both} is given with --points. Give the air, or the points of moisture, not both.`]);
  }
  const project = await openProject('season', given.operands, io);
  const moisture = air === undefined ? { points: points! } : moistureChange(air);
  const forecast = seasonForecast(project, moisture.points);
  const { stock, title } = project;
  if (given.flags.includes('json')) {
    const found = {
      format: 'ringtrue-season',
      version: 1,
      title,
      wood: { named: stock.wood, computedAs: forecast.wood.label, standing: forecast.wood.standing },
      ...(air && { air }),
      moisturePoints: moisture.points,
      ...('percent' in moisture && {
        moistureBeforePercent: moisture.percent.before,
        moistureAfterPercent: moisture.percent.after,
      }),
      sawings: forecast.sawings.map(({ sawing, shrinkage, change }) => {
        return { sawing: sawing ?? 'sheet', ...percentOf(shrinkage), ...change };
      }),
    };
    io.stdout.write(`${JSON.stringify(found, null, 2)}\n`);
    return;
  }
  const texts = [
    ...titleTexts(project),
    [moistureSentence(moisture, air), woodSentences(forecast, stock.wood)].join('\n'),
    plainText(seasonTable(forecast, project)),
    seasonSentences(forecast, project).join('\n'),
  ];
  io.stdout.write(fitForTerminal(`${texts.join('\n\n')}\n`));
}

function percentOf({ alongRing, upFace, throughThickness }: StaveShrinkage) {
  return {
    shrinkageAlongRingPercent: 100 * alongRing,
    shrinkageUpFacePercent: 100 * upFace,
    shrinkageThroughThicknessPercent: 100 * throughThickness,
  };
}
