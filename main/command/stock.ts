/** `ringtrue stock`: the strips, the cuts in their order, and the chance of a stave too few. */
import { isDeepStrictEqual } from 'node:util';
import { pitchMm, ringGeometry } from '../../sim/geometry/ring';
import type { Method, Project } from '../../sim/project/document';
import { ASSUMED_STOCK_SPREAD, type StaveCount, type StockSpread, staveCount } from '../../sim/stock/short';
import { type Strip, type StripCut, stripsOf } from '../../sim/stock/strips';
import { cautionsFor, cautionsText } from '../../sim/wording/cautions';
import { cutTable, stockSentences, stripTable } from '../../sim/wording/stock';
import { plainText } from '../../sim/wording/tables';
import { decimalNumber, readArguments } from './arguments';
import { fitForTerminal } from './fit-for-terminal';
import { openProject } from './open-project';
import { titleTexts } from './predict';
import { methodsWanted } from './run-options';
import type { CommandIo } from './streams';

const STOCK_OPTIONS = { json: 'flag', method: 'value', 'kerf-sigma': 'value', 'length-sigma': 'value' } as const;

const upTo = (to: number) => ({ from: 0, to, open: false, whole: false });

interface MethodStock {
  method: Method;
  pitchMm: number;
  strips: Strip[];
  count: StaveCount | undefined;
}

export async function stock(args: readonly string[], io: CommandIo): Promise<void> {
  const given = readArguments('stock', args, STOCK_OPTIONS, 1);
  const spread: StockSpread = {
    lengthSigmaMm: decimalNumber(given, 'length-sigma', upTo(1000), 'mm') ?? ASSUMED_STOCK_SPREAD.lengthSigmaMm,
    kerfSharedSigmaMm: decimalNumber(given, 'kerf-sigma', upTo(10), 'mm') ?? ASSUMED_STOCK_SPREAD.kerfSharedSigmaMm,
  };
  const project = await openProject('stock', given.operands, io);
  const geometry = ringGeometry(project.piece);
  const found = methodsWanted(given, project).map((index): MethodStock => {
    const method = project.methods[index]!;
    return {
      method,
      pitchMm: pitchMm(geometry, method.blade, method.sequence),
      strips: stripsOf(project, method, geometry),
      count: staveCount(geometry, method, project.stock, spread),
    };
  });
  const { display } = project;
  const methods = found.map(({ method }) => method);
  if (given.flags.includes('json')) {
    io.stdout.write(`${JSON.stringify(stockJson(project, found, spread, cautionsFor(project, methods)), null, 2)}\n`);
    return;
  }
  const texts = found.flatMap(({ method, pitchMm: pitch, strips, count }) => {
    const sentences = stockSentences(method.name, pitch, count, spread, project.stock, display);
    const alike = found.find((other) => isDeepStrictEqual(other.strips, strips));
    if (alike !== undefined && alike.method !== method) {
      return [[...sentences, `Its strips and cuts are those of “${alike.method.name}”.`].join('\n')];
    }
    const tables = [stripTable(strips, display), cutTable(strips, method.sequence, display)];
    return [sentences.join('\n'), ...tables.map(plainText)];
  });
  io.stdout.write(
    fitForTerminal(`${[...titleTexts(project), ...texts, cautionsText(project, methods)].join('\n\n')}\n`),
  );
}

/** Strips, cuts and staves counted from 1, as on paper. */
function stockJson(project: Project, found: MethodStock[], spread: StockSpread, cautions: readonly string[]): object {
  return {
    format: 'ringtrue-stock',
    version: 1,
    title: project.title,
    ...spread,
    methods: found.map(({ method, pitchMm: pitch, strips, count }) => {
      return {
        name: method.name,
        pitchMm: pitch,
        kerfPerCutSigmaMm: method.blade.kerfSigmaMm,
        chanceShort: count?.chanceShort ?? null,
        expectedStaves: count?.expectedStaves ?? null,
        strips: strips.map((strip, k) => {
          const { firstStave, staves, lengthMm, neededMm, cuts } = strip;
          return { strip: k + 1, firstStave: firstStave + 1, staves, lengthMm, neededMm, cuts: cuts.map(cutJson) };
        }),
      };
    }),
    cautions,
  };
}

function cutJson({ order, right, left, turned, kerfFromMm, kerfToMm, inHandMm, leftMm }: StripCut) {
  return {
    cut: order + 1,
    ...(right !== undefined && { rightFaceOfStave: right + 1 }),
    ...(left !== undefined && { leftFaceOfStave: left + 1 }),
    turned,
    kerfFromMm,
    kerfToMm,
    inHandMm,
    leftMm,
  };
}
