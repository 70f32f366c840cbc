/**
 * Who may import whom, and what the engine may not touch. The table is the architecture of the program; this file reads
 * sources and says where they break it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, normalize } from 'node:path';
import { type ESTree, parseSync, Visitor } from 'vite';

/** What the files of one folder may import. */
interface Allowance {
  folder: string;
  /** Folders of the program. */
  folders: readonly string[];
  /** Folders of the program of which only types may be taken. */
  typesFrom?: readonly string[];
  /** Packages; `node` stands for everything that Node brings along. */
  packages: readonly string[];
}

const INTERFACE_PACKAGES = [
  'react',
  'react-dom',
  'react-aria-components',
  'recharts',
  'mathjs',
  'zod',
  'zustand',
  'zundo',
];

/** The first folder that holds a file decides. */
const TABLE: readonly Allowance[] = [
  { folder: 'sim/project', folders: ['sim'], packages: ['zod'] },
  { folder: 'sim', folders: ['sim'], packages: [] },
  { folder: 'renderer/worker', folders: ['sim', 'renderer/worker'], packages: [] },
  { folder: 'renderer', folders: ['sim', 'renderer'], typesFrom: ['main/contract'], packages: INTERFACE_PACKAGES },
  { folder: 'main/shell', folders: ['sim', 'main'], packages: ['node', 'zod', 'electron'] },
  { folder: 'main/contract', folders: ['sim', 'main/contract'], packages: ['zod'] },
  { folder: 'main', folders: ['sim', 'main'], packages: ['node', 'zod'] },
];

/** The floors inside the engine, ground first. A file takes from its own floor and from those below it. */
export const SIM_FLOORS: readonly string[] = [
  'statistics',
  'random',
  'geometry',
  'project',
  'closure',
  'errors',
  'stock',
  'season',
  'testing',
  'reading',
  'run',
  'budget',
  'decide',
  'questions',
  'wording',
  'export',
];

/** These load a program that is built from another folder, by its path in dist/. */
const LOADERS: readonly string[] = ['main/print/load-report-program.ts'];

/** The one file that may listen to what pages say, because it checks who said it; and the names by which Electron offers that. */
const LISTENER = 'main/shell/listen-to-pages.ts';
const LISTENING_NAMES = new Set(['ipcMain', 'ipc']);
/**
 * The floors inside the pages: what each folder of `renderer` stands on. None stands on the app, which mounts them all,
 * and a page stands on no other page. Of the workers the pages take only the types of what is asked and answered.
 */
export const RENDERER_FLOORS: Readonly<Record<string, { on: readonly string[]; typesFrom?: readonly string[] }>> = {
  inputs: { on: [] },
  host: { on: [] },
  worker: { on: [] },
  state: { on: ['worker'] },
  parts: { on: ['inputs', 'state'] },
  drawing: { on: ['inputs', 'parts'] },
  exports: { on: ['inputs', 'state', 'parts'] },
  charts: { on: ['inputs', 'state', 'parts', 'exports'] },
  report: { on: ['inputs', 'state', 'parts', 'drawing', 'charts'] },
  pages: { on: ['inputs', 'state', 'parts', 'drawing', 'exports', 'charts', 'report'], typesFrom: ['worker'] },
  app: { on: ['inputs', 'host', 'worker', 'state', 'parts', 'drawing', 'exports', 'charts', 'report', 'pages'] },
};

/** One way in which a file breaks the law: where and what. */
export interface Breach {
  file: string;
  what: string;
}

interface Import {
  specifier: string;
  typeOnly: boolean;
}

interface Reading {
  imports: Import[];
  /** Things that differ from run to run: the clock and unseeded chance. */
  restless: string[];
  /** Names in it by which a shell listens to pages. */
  listening: string[];
}

function isWithin(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`);
}

const COMPUTED = '(computed)';

/** A static text, or the words of a computed one so that the law can refuse it. */
function specifierOf(source: ESTree.Expression | ESTree.StringLiteral): string {
  return source.type === 'Literal' && typeof source.value === 'string' ? source.value : COMPUTED;
}

const RESTLESS_MEMBERS = new Set(['Math.random', 'Date.now', 'globalThis.performance', 'globalThis.Date']);
const RESTLESS_NAMES = new Set(['performance', 'Date', 'crypto']);

/**
 * @param file its name, which tells whether it holds JSX
 * @param source its text
 * @throws {SyntaxError} when it cannot be parsed
 */
function read(file: string, source: string): Reading {
  const { program, errors } = parseSync(file, source);
  if (errors[0]) throw new SyntaxError(`${file}: ${errors[0].message}`);
  const imports: Import[] = [];
  const restless = new Set<string>();
  const listening = new Set<string>();
  const add = (from: ESTree.Expression | ESTree.StringLiteral, typeOnly: boolean) => {
    imports.push({ specifier: specifierOf(from), typeOnly });
  };
  new Visitor({
    ImportDeclaration(node) {
      add(node.source, node.importKind === 'type');
    },
    ExportAllDeclaration(node) {
      add(node.source, node.exportKind === 'type');
    },
    ExportNamedDeclaration(node) {
      if (node.source) add(node.source, node.exportKind === 'type');
    },
    ImportExpression(node) {
      add(node.source, false);
    },
    TSImportType(node) {
      add(node.source, true);
    },
    MemberExpression(node) {
      if (node.object.type !== 'Identifier') return;
      const { property } = node;
      const name = property.type === 'Identifier' ? property.name : property.type === 'Literal' ? property.value : '';
      const member = `${node.object.name}.${name}`;
      if (RESTLESS_MEMBERS.has(member)) restless.add(member);
    },
    Identifier(node) {
      if (RESTLESS_NAMES.has(node.name)) restless.add(node.name);
      if (LISTENING_NAMES.has(node.name)) listening.add(node.name);
    },
  }).visit(program);
  return { imports, restless: [...restless], listening: [...listening] };
}

function packageOf(specifier: string): string {
  if (specifier.startsWith('node:') || builtinModules.includes(specifier)) return 'node';
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

function simBreachOf(file: string, { specifier }: Import): string | null {
  const target = targetOf(file, specifier);
  const [own, other] = [file, target].map((path) => SIM_FLOORS.indexOf(path.split('/')[1] ?? ''));
  // What lies in no folder, such as the version, stands on nothing and may be taken by all.
  if (!specifier.startsWith('.') || own === undefined || other === undefined || other <= own) return null;
  return `${file.split('/').slice(0, 2).join('/')} is below ${target.split('/').slice(0, 2).join('/')}`;
}

function targetOf(file: string, specifier: string): string {
  return normalize(join(dirname(file), specifier)).replaceAll('\\', '/');
}

/** The folder of a file of `renderer` that is its own to import from: its floor, and of the pages its page alone. */
function rendererRoom(path: string): string {
  const parts = path.split('/');
  return parts.slice(0, parts[1] === 'pages' ? 3 : 2).join('/');
}

function rendererBreachOf(file: string, { specifier, typeOnly }: Import): string | null {
  const target = targetOf(file, specifier);
  if (!specifier.startsWith('.') || !isWithin(target, 'renderer')) return null;
  const room = rendererRoom(file);
  if (isWithin(target, room)) return null;
  const [from = '', to = ''] = [file, target].map((path) => path.split('/')[1]);
  const { on, typesFrom = [] } = RENDERER_FLOORS[from] ?? { on: [] };
  if (on.includes(to) || (typeOnly && typesFrom.includes(to))) return null;
  return `${room} does not stand on ${rendererRoom(target)}`;
}

function breachOf(file: string, allowance: Allowance, { specifier, typeOnly }: Import): string | null {
  const { folder, folders, typesFrom = [], packages } = allowance;
  if (!specifier.startsWith('.')) {
    return packages.includes(packageOf(specifier)) ? null : `${folder} may not import ${specifier}`;
  }
  const target = targetOf(file, specifier);
  if (folders.some((allowed) => isWithin(target, allowed))) return null;
  if (!typesFrom.some((allowed) => isWithin(target, allowed))) return `${folder} may not import ${target}`;
  return typeOnly ? null : `${folder} may import only types from ${target}`;
}

/**
 * @param file the path from the root, such as `sim/run/block.ts`
 * @param source its text
 * @returns every breach in it; files outside the table have none
 */
export function breachesIn(file: string, source: string): Breach[] {
  const allowance = TABLE.find(({ folder }) => isWithin(file, folder));
  if (!allowance) return [];
  const { imports, restless, listening } = read(file, source);
  const isLoader = LOADERS.includes(file);
  const judged = imports.filter(({ specifier }) => !(isLoader && specifier === COMPUTED));
  const found = judged.flatMap((one) => breachOf(file, allowance, one) ?? []);
  if (isWithin(file, 'sim')) found.push(...imports.flatMap((one) => simBreachOf(file, one) ?? []));
  if (isWithin(file, 'renderer')) found.push(...imports.flatMap((one) => rendererBreachOf(file, one) ?? []));
  if (isWithin(file, 'sim')) found.push(...restless.map((name) => `sim may not use ${name}`));
  if (file !== LISTENER) found.push(...listening.map((name) => `only ${LISTENER} may use ${name}`));
  return found.map((what) => ({ file, what }));
}

/**
 * @param root the folder of the program
 * @returns the path from the root and the text of every file under the law
 */
export function sourcesUnderLaw(root: string): { file: string; source: string }[] {
  return ['sim', 'renderer', 'main'].flatMap((top) =>
    readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => `${top}/${name.replaceAll('\\', '/')}`)
      .map((file) => ({ file, source: readFileSync(join(root, file), 'utf8') })),
  );
}

/**
 * @param sources files with their texts, as `sourcesUnderLaw` gives them
 * @returns circles of files that import each other, types included: each as the files along it
 */
export function circlesIn(sources: readonly { file: string; source: string }[]): string[][] {
  const plain = (path: string): string => path.replace(/\.tsx?$/, '');
  const targets = new Map(
    sources.map(({ file, source }) => {
      const own = read(file, source).imports.filter(({ specifier }) => specifier.startsWith('.'));
      return [plain(file), own.map(({ specifier }) => plain(targetOf(file, specifier)))];
    }),
  );
  const done = new Set<string>();
  const circles: string[][] = [];
  const visit = (file: string, path: readonly string[]): void => {
    const at = path.indexOf(file);
    if (at >= 0) circles.push(path.slice(at));
    if (at >= 0 || done.has(file)) return;
    for (const target of targets.get(file) ?? []) visit(target, [...path, file]);
    done.add(file);
  };
  for (const file of targets.keys()) visit(file, []);
  return circles;
}
