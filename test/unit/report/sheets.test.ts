/** The sheets as HTML and as PDF say what the shared wording says, whole and on the paper asked for. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { MakerAnswers, Paper, ReportProgram, SheetInput } from '../../../main/contract/report';
import { loadReportProgram } from '../../../main/print/load-report-program';
import { pageCount } from '../../../main/print/page-count';
import { printPdf } from '../../../main/print/print-pdf';
import { ensureChromium } from '../../../main/ready.mjs';
import type { Method, Project } from '../../../sim/project/document';
import { exampleProject, mirrorFrameProject, planterProject } from '../../../sim/project/example';
import { fieldAt, NUMBER_FIELDS } from '../../../sim/project/fields';
import { finish } from '../../../sim/run/block-loop';
import type { MethodResult } from '../../../sim/run/prediction';
import { runMethod } from '../../../sim/run/run-method';
import { cautionsFor } from '../../../sim/wording/cautions';
import {
  basisSentence,
  expectSentences,
  explainedResult,
  eyeSentences,
  pieceSentence,
  remainsSentences,
  seasonGapSentences,
} from '../../../sim/wording/explain';
import { makingSentences } from '../../../sim/wording/making';
import { methodTable } from '../../../sim/wording/tables';
import { whySentences } from '../../../sim/wording/why';
import { answerTo } from '../../support/answer-to';
import { type ReadPage, readPdf, unspaced } from '../../support/read-pdf';
import { shippedPrograms } from '../../support/shipped-programs';

const SLOW_MS = 240_000;
const POINTS_PER_MM = 72 / 25.4;

let program: ReportProgram;
let results: MethodResult[];
let answers: MakerAnswers;

const example = (): Project => {
  const project = exampleProject();
  return { ...project, run: { ...project.run, trials: 1000 } };
};

beforeAll(async () => {
  program = await loadReportProgram(await shippedPrograms());
  const project = example();
  results = project.methods.map((_, index) => finish(runMethod(project, index)));
  answers = {
    budget: { ...(await answerTo(project, 2, { kind: 'budget', rings: 500 })), indices: [] },
    testValue: await answerTo(project, 2, { kind: 'testValue', trials: 200 }),
  };
}, SLOW_MS);

function input(project: Project, paper: Paper = 'a4'): SheetInput {
  const result = explainedResult(project, results);
  if (result === undefined) throw new Error('nothing was simulated');
  return { project, results, result, paper };
}

/** The method that the sheets are about. */
const chosen = (project: Project): Method[] =>
  project.methods.filter(({ name }) => name === input(project).result.prediction.name);

const client = (project: Project, paper?: Paper): string =>
  program.renderReport(input(project, paper), 'client', { ...answers, testValue: null });
const maker = (project: Project, paper?: Paper): string =>
  program.renderReport(input(project, paper), 'maker', answers);

/** What is to be read on a page, blanks left out: lines break where they like. */
function words(html: string): string {
  const text = html.replace(/<style>[\s\S]*?<\/style>/g, '').replace(/<[^>]+>/g, ' ');
  return unspaced(text.replaceAll('&#x27;', "'").replaceAll('&quot;', '"').replaceAll('&amp;', '&'));
}

/** The rows of all tables, each cell as it reads. */
function tableRows(html: string): string[][] {
  const cellsOf = (row: string): string[] =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell = '']) =>
      cell.replace(/<[^>]+>/g, '').replace(/[\s\u00a0\u2060]+/g, ' '),
    );
  return [...html.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row = '']) => cellsOf(row));
}

/** Every number with its key path, `[]` for the place in a list. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (Array.isArray(value)) return value.flatMap((entry) => numbersIn(entry, `${path}[]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) => numbersIn(entry, path === '' ? key : `${path}.${key}`));
}

function clientSentences(project: Project): Record<string, string[]> {
  const { result } = input(project);
  const method = project.methods.find(({ name }) => name === result.prediction.name);
  if (method === undefined) throw new Error('no method');
  return {
    piece: [pieceSentence(project)],
    why: whySentences(project, method, answers.budget?.budget ?? null),
    expect: expectSentences(project, result, results),
    making: makingSentences(project, method, result),
    eye: eyeSentences(project, result),
    season: seasonGapSentences(project),
    remains: remainsSentences(project, result),
    basis: [basisSentence(project, result)],
  };
}

describe('the client’s sheet', () => {
  it('says every sentence of the shared wording, and the maker’s own', () => {
    const explain = {
      title: 'Lantern for a porch',
      client: 'For the neighbours',
      closing: 'Oiled twice.\n\nKeep it dry.',
    };
    const project = { ...example(), explain };
    const read = words(client(project));
    for (const sentence of Object.values(clientSentences(project)).flat()) expect(read).toContain(unspaced(sentence));
    for (const own of ['Lantern for a porch', 'For the neighbours', 'Oiled twice.', 'Keep it dry.']) {
      expect(read).toContain(unspaced(own));
    }
    expect(read).not.toContain(unspaced(project.title));
  });

  it.each(['why', 'making', 'eye', 'season', 'remains'] as const)('leaves out what is not to be shown: %s', (part) => {
    const all = example();
    const left = { ...all, explain: { show: { [part]: false } } };
    const [gone = ''] = clientSentences(all)[part] ?? [];
    expect(words(client(all))).toContain(unspaced(gone));
    expect(words(client(left))).not.toContain(unspaced(gone));
  });

  it('draws the piece and fifty dots unless told otherwise', () => {
    const bareSheet = { ...example(), explain: { show: { drawing: false, dots: false } } };
    expect(client(example()).match(/<svg/g)).toHaveLength(2);
    expect(client(example()).match(/<circle[^>]* r="/g)?.length).toBeGreaterThanOrEqual(50);
    expect(client(bareSheet)).not.toContain('<svg');
  });

  it('runs nothing, loads nothing, and takes names for text', () => {
    const title = '<script>alert(1)</script><img src=x onerror=alert(1)>';
    const html = client({ ...example(), title });
    expect(html).not.toMatch(/<script|<img|<link|<iframe|javascript:|https?:\/\/(?!www\.w3\.org)|url\((?!#)/i);
    expect(html).toContain('&lt;script&gt;');
    expect(html).toContain('default-src &#x27;none&#x27;');
  });

  it('is about the method that was chosen', () => {
    const project = { ...example(), explain: { method: 'Marked line' } };
    expect(input(project).result.prediction.name).toBe('Marked line');
    expect(words(client(project))).toContain(unspaced(expectSentences(project, results[0]!, results)[0]!));
  });
});

describe('the maker’s report', () => {
  it('holds every method’s row, the origin of figures, the cuts, the cautions, seed and version', () => {
    const project = example();
    const read = words(maker(project));
    const { rows } = methodTable(results, project.display);
    for (const cell of rows.flat()) expect(read).toContain(unspaced(cell));
    for (const caution of cautionsFor(project, chosen(project))) {
      expect(read).toContain(unspaced(caution));
    }
    for (const said of ['commonpractice', 'assumed', 'EN1870-1', 'seed7', 'Ringtrue0.1.0', 'rightfaceofstave12']) {
      expect(read).toContain(said);
    }
    expect(read).not.toContain('Notworkedoutyet');
  });

  it('says the cautions before the cuts, and first that too little is left to hold', () => {
    const project = { ...example(), stock: { ...example().stock, holdMm: 120 } };
    const read = words(maker(project));
    const [danger, first] = cautionsFor(project).map(unspaced);
    expect(read.indexOf(danger!)).toBeGreaterThan(0);
    expect(read.indexOf(first!)).toBeGreaterThan(read.indexOf(danger!));
    expect(read.indexOf('Stripsandcutsintheirorder')).toBeGreaterThan(read.indexOf(first!));
    expect(words(maker(example()))).not.toContain('Danger');
  });

  it('shows every number of the project file under its name', () => {
    const plain = example();
    const filled: Project = {
      ...plain,
      stock: { ...plain.stock, holdMm: 180.5, trimMm: 11 },
      costs: {
        batch: 3,
        stockPerRing: 42.5,
        testStockPerRound: 6.25,
        ratePerHour: 33,
        remedyMinutes: 26,
        assemblyMinutes: 41,
      },
      methods: plain.methods.map((method) => ({
        ...method,
        blade: { ...method.blade, stiffnessNPerMm: 57, recutAboveMm: 0.35 },
        test: { ...method.test, armMm: 71 },
      })),
      run: { ...plain.run, settle: { relative: 0.004 } },
    };
    const shown = tableRows(maker(filled));
    const { prediction } = input(filled).result;
    const about = filled.methods.filter(({ name }) => name === prediction.name);
    const numbers = numbersIn({ ...filled, methods: about }).filter(([key]) => key !== 'version');
    // Nothing that the file can hold is left out of the walk.
    expect(new Set(numbers.map(([key]) => key))).toEqual(new Set(Object.keys(NUMBER_FIELDS)));
    for (const [key, value] of numbers) {
      const cells = shown.filter(([name]) => name === fieldAt(key)?.label).map(([, cell = '']) => cell);
      const told = cells.map((cell) => Number(/-?[\d.,]+/.exec(cell)?.[0].replaceAll(/,(?=\d{3})|,$/g, '')));
      const nearest = Math.min(...told.map((number) => Math.abs(number - value)));
      expect(nearest, `${key} ${value}: ${cells.join(' | ')}`).toBeLessThanOrEqual(1e-9);
    }
  });

  it('says what is meant where the file leaves a number out', () => {
    const project = example();
    const { stripLengthMm: _, ...stock } = project.stock;
    const { insert: __, ...piece } = project.piece;
    const shown = tableRows(maker({ ...project, stock, piece: { ...piece, showFace: 'both' } }));
    for (const row of [
      ['Strip length', 'just enough', 'typed in'],
      ['Hidden gap limit', 'nothing is hidden'],
      ['Settling tolerance', 'none'],
    ]) {
      expect(shown).toContainEqual(row);
    }
    expect(shown.map(([name]) => name)).not.toContain('Insert diameter');
  });

  it('says so where budget and test cuts are not worked out', () => {
    const html = program.renderReport(input(example()), 'maker', { budget: null, testValue: null });
    expect(words(html).match(/Notworkedoutyet/g)).toHaveLength(2);
  });
});

/** On the first page all settings, sizes, limits, costs and cautions, on the second the whole piece drawn. */
function expectWholeFirstPage(pages: readonly ReadPage[], project: Project): void {
  const [first, second] = pages.map(({ text }) => unspaced(text));
  for (const last of ['Jointthroughthethickness', 'Assemblytime40min', ...cautionsFor(project, chosen(project))]) {
    expect(first).toContain(unspaced(last));
  }
  expect(second).toMatch(/^page2of\d+Thepiecedrawn/);
  for (const last of ['overtheflats', 'outerface', 'joint,alongtheedge']) expect(second).toContain(last);
}

describe('printed', () => {
  beforeAll(async () => {
    process.env.RINGTRUE_CHROMIUM ??= await ensureChromium();
  });

  it(
    'the client’s sheet is one page of A4 with everything on it, tagged and titled',
    async () => {
      const project = { ...example(), explain: { closing: 'The joints are splined, so a hairline is no weakness.' } };
      const pdf = await readPdf(await printPdf(client(project)));
      expect(pdf.pages).toHaveLength(1);
      const [page] = pdf.pages;
      if (!page) throw new Error('no page');
      expect(page.widthPt / POINTS_PER_MM).toBeCloseTo(210, 0);
      expect(page.heightPt / POINTS_PER_MM).toBeCloseTo(297, 0);
      const read = unspaced(page.text);
      for (const sentence of Object.values(clientSentences(project)).flat()) expect(read).toContain(unspaced(sentence));
      expect(read).toContain(unspaced(project.explain.closing));
      expect(page.fontsNotEmbedded).toEqual([]);
      // The drawing and the fifty dots are lines and areas, none of them a picture.
      expect(page.paths).toBeGreaterThan(60);
      expect(page.images).toBe(0);
      expect(pdf.isTagged).toBe(true);
      expect(pdf.title).toBe(project.title);
      expect(pdf.outline).toEqual(expect.arrayContaining([project.title, 'What to expect', 'What remains']));
      expect(page.left / POINTS_PER_MM).toBeGreaterThan(13);
      expect(page.right / POINTS_PER_MM).toBeLessThan(197);
      expect(page.bottom / POINTS_PER_MM).toBeGreaterThan(13);
    },
    SLOW_MS,
  );

  const LONG = {
    title: `${'A planter with sixty leaning sides '.repeat(3)}for it`.slice(0, 120),
    client: 'For the neighbours at the corner house, who asked for it in the spring. '.repeat(2).slice(0, 120),
    closing: 'The joints are splined with walnut, so that a hairline is no weakness. '.repeat(12).slice(0, 800),
  };
  const splayed60 = (): Project => {
    const { piece } = planterProject();
    const size = { by: 'outsideFlats', mm: 1200 } as const;
    return { ...example(), display: 'inch', piece: { ...piece, sides: 60, size }, explain: LONG };
  };

  it.each([
    ['a4', 'long words and the example', () => ({ ...example(), explain: LONG })],
    ['letter', 'long words and the example', () => ({ ...example(), explain: LONG })],
    ['letter', 'long words and sixty sides in inches', splayed60],
    ['a4', 'a frame', () => ({ ...example(), piece: mirrorFrameProject().piece })],
    ['letter', 'nothing but words', () => ({ ...example(), explain: { show: { drawing: false, dots: false } } })],
  ] as const)(
    'the client’s sheet fills one page of %s: %s',
    async (paper, _, of) => {
      const pdf = await printPdf(client(of(), paper));
      const { pages } = await readPdf(pdf);
      expect(pages).toHaveLength(1);
      expect(pageCount(pdf)).toBe(1);
      // The small print stands at the foot, less than 25 mm above the edge of the paper: nothing is left empty.
      expect((pages[0]?.bottom ?? 0) / POINTS_PER_MM).toBeGreaterThan(13);
      expect((pages[0]?.bottom ?? 0) / POINTS_PER_MM).toBeLessThan(25);
    },
    SLOW_MS,
  );

  it(
    'pages are counted, so that a sheet that takes two can be told',
    async () => {
      const closing = 'One\n'.repeat(199);
      const pdf = await printPdf(client({ ...example(), explain: { closing } }));
      const { pages } = await readPdf(pdf);
      expect(pages.length).toBeGreaterThan(1);
      expect(pageCount(pdf)).toBe(pages.length);
    },
    SLOW_MS,
  );

  it(
    'the maker’s report is whole on Letter, its pages numbered',
    async () => {
      const html = maker(example(), 'letter');
      const pdf = await readPdf(await printPdf(html));
      expect(pdf.pages.length).toBeGreaterThan(3);
      expectWholeFirstPage(pdf.pages, example());
      pdf.pages.forEach((page, k) => {
        expect([page.widthPt, page.heightPt].map((points) => Math.round(points / 7.2) / 10)).toEqual([8.5, 11]);
        expect(unspaced(page.text)).toContain(`page${k + 1}of${pdf.pages.length}`);
        expect(page.left / 72).toBeGreaterThan(0.6);
        expect(page.right / 72).toBeLessThan(7.9);
        expect(page.bottom / 72).toBeGreaterThan(0.25);
        expect(page.top / 72).toBeLessThan(10.7);
        expect(page.fontsNotEmbedded).toEqual([]);
        expect(page.images).toBe(0);
      });
      const read = unspaced(pdf.pages.map(({ text }) => text).join(' '));
      for (const heading of html.match(/<h2>[^<]+/g) ?? []) expect(read).toContain(words(heading.slice(4)));
      for (const cell of methodTable(results, 'metric').rows.flat()) expect(read).toContain(unspaced(cell));
    },
    SLOW_MS,
  );

  it.each([
    ['upright', 'a4', exampleProject],
    ['splayed', 'a4', planterProject],
    ['splayed', 'letter', planterProject],
    ['flat', 'letter', mirrorFrameProject],
  ] as const)(
    'the maker’s first page holds settings, limits, costs and cautions, and the second the drawings, %s on %s',
    async (_, paper, ofPiece) => {
      const project = { ...example(), piece: ofPiece().piece };
      const { pages } = await readPdf(await printPdf(maker(project, paper)));
      expectWholeFirstPage(pages, project);
    },
    SLOW_MS,
  );
});
