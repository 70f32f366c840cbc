/** The maker's sheet, section by section: sentences and tables of the shared wording in the order of the work. */

import type { MakerAnswers, SheetInput } from '../../main/contract/report';
import { aheadChance } from '../../sim/decide/chance-ahead';
import { geometrySummary, pitchMm, ringGeometry } from '../../sim/geometry/ring';
import type { Method, Project } from '../../sim/project/document';
import { warnings } from '../../sim/reading/checks';
import type { MethodResult } from '../../sim/run/prediction';
import { ASSUMED_AIR, moistureChange, seasonForecast } from '../../sim/season/forecast';
import { ASSUMED_STOCK_SPREAD, staveCount } from '../../sim/stock/short';
import { stripsOf } from '../../sim/stock/strips';
import { leftOutSentence, SOURCE_TABLE_NOTE, sourceTable } from '../../sim/wording/budget';
import { CAUTIONS_TITLE } from '../../sim/wording/cautions';
import { basisSentence } from '../../sim/wording/explain';
import { gapOriginSentence } from '../../sim/wording/gap-origin';
import { gapRows, limitRows, pieceRows, runRows } from '../../sim/wording/report';
import { moistureSentence, seasonSentences, seasonTable, woodSentences } from '../../sim/wording/season';
import { cutTable, stockSentences, stripTable } from '../../sim/wording/stock';
import { geometryTable, methodTable, predictionTable } from '../../sim/wording/tables';
import { readingWords } from '../../sim/wording/test-pieces';
import { testAnswer, testValueTable } from '../../sim/wording/test-value';
import { recommendation } from '../../sim/wording/verdict';
import { methodFigures, stockFigures } from './method-figures';
import { methodIndexOf } from './method-index';
import type { SheetTable } from './sheet-table';

export interface SheetSection {
  title: string;
  /** What is drawn at its head. */
  picture?: 'piece' | 'methods' | 'method';
  paragraphs: readonly string[];
  tables: readonly SheetTable[];
  isSideBySide?: boolean;
  /** Said after the tables, one thing an item. */
  list?: readonly string[];
  note?: string;
  /** The cautions of this method follow. */
  cautionsFor?: Method;
}

export function makerSections({ project, results, result }: SheetInput, answers: MakerAnswers): SheetSection[] {
  const index = methodIndexOf(project, result);
  const method = project.methods[index];
  if (method === undefined) throw new Error('The sheet is about a method that the project does not have.');
  return [
    pieceSection(project),
    { title: CAUTIONS_TITLE, paragraphs: [], tables: [], cautionsFor: method },
    { title: 'The piece drawn', picture: 'piece', paragraphs: [], tables: [] },
    ...(results.length > 1 ? [methodsSection(project, results)] : []),
    {
      title: `“${method.name}”: what it leads to`,
      picture: 'method',
      paragraphs: [],
      tables: [gapRows(result, project.display), predictionTable(result, project.display)],
    },
    budgetSection(project, answers),
    testSection(project, index, method, answers),
    {
      title: `“${method.name}”: what went in`,
      paragraphs: [],
      tables: [...methodFigures(method, project.display), ...stockFigures(project.stock, project.display)],
    },
    cuttingSection(project, method),
    seasonSection(project),
    basisSection(project, result),
  ];
}

function pieceSection(project: Project): SheetSection {
  const { piece, display } = project;
  const ring = geometryTable(geometrySummary(ringGeometry(piece)), display);
  return {
    title: 'The piece and the saw',
    isSideBySide: true,
    paragraphs: warnings(project).map(({ sentence }) => sentence),
    tables: [pieceRows(project), ring, limitRows(project)],
  };
}

function methodsSection(project: Project, results: readonly MethodResult[]): SheetSection {
  const pairs = results.flatMap((a, i) =>
    results.slice(i + 1).map((b) => {
      return { first: a.prediction.name, second: b.prediction.name, firstAhead: aheadChance(a.sample, b.sample) };
    }),
  );
  const { headline, because } = recommendation(project, results, pairs);
  return {
    title: 'The methods side by side',
    picture: 'methods',
    paragraphs: [headline],
    tables: [methodTable(results, project.display)],
    list: because,
  };
}

const NOT_YET = 'Not worked out yet.';

function budgetSection({ display }: Project, { budget }: MakerAnswers): SheetSection {
  const title = 'Where the gap comes from';
  if (budget === null) return { title, paragraphs: [NOT_YET], tables: [] };
  const leftOut = leftOutSentence(budget.budget, budget.indices);
  return {
    title,
    paragraphs: [gapOriginSentence(budget.budget, display)],
    tables: [sourceTable('Source', budget.budget, budget.indices, display)],
    list: leftOut === null ? [] : [leftOut],
    note: SOURCE_TABLE_NOTE.replaceAll('\n', ' '),
  };
}

function testSection(project: Project, index: number, method: Method, { testValue }: MakerAnswers): SheetSection {
  const { piece, display } = project;
  const { kind, maxRounds } = method.test;
  const isTested = kind !== 'none' && maxRounds > 0;
  const reading = isTested ? readingWords(kind, piece, method, display) : null;
  const answer = testValue === null ? null : testAnswer(testValue, project, index);
  return {
    title: 'Test cuts',
    paragraphs: answer === null ? [NOT_YET] : [answer.headline],
    tables: testValue === null ? [] : [testValueTable(testValue)],
    list: [...(answer?.because ?? []), ...(reading === null ? [] : [reading.where, reading.tool])],
  };
}

/** What the strips give, and every cut in its order. */
export function cuttingSection(project: Project, method: Method, fractions = false): SheetSection {
  const { piece, stock, display } = project;
  const geometry = ringGeometry(piece);
  const strips = stripsOf(project, method, geometry);
  const pitch = pitchMm(geometry, method.blade, method.sequence);
  const count = staveCount(geometry, method, stock, ASSUMED_STOCK_SPREAD);
  return {
    title: 'Strips and cuts in their order',
    paragraphs: stockSentences(method.name, pitch, count, ASSUMED_STOCK_SPREAD, stock, display, fractions),
    tables: [
      stripTable(strips, display, fractions),
      { ...cutTable(strips, method.sequence, display, fractions), wordColumns: 4 },
    ],
  };
}

/** What a winter and a summer do to the ring. */
export function seasonSection(project: Project): SheetSection {
  const moisture = moistureChange(ASSUMED_AIR);
  const forecast = seasonForecast(project, moisture.points);
  return {
    title: 'What the seasons do',
    paragraphs: [moistureSentence(moisture, ASSUMED_AIR), woodSentences(forecast, project.stock.wood)],
    tables: [seasonTable(forecast, project)],
    list: seasonSentences(forecast, project),
  };
}

function basisSection(project: Project, result: MethodResult): SheetSection {
  const { rule, stopReason } = result.prediction;
  const why = {
    settled: 'the figures had settled',
    'trial-limit': 'all rings asked for were made',
    cancelled: 'it was stopped',
  };
  return {
    title: 'What it rests on',
    paragraphs: [
      basisSentence(project, result),
      `Closed by ${rule}; the run ended because ${why[stopReason]}.`,
      'In brackets: where a figure lies, 95 times in 100, if more rings were simulated. It says nothing about how much rings differ, nor how well the errors put in are known. A time without brackets is sure to the minute.',
    ],
    tables: [runRows(project)],
  };
}
