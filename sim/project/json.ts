/** Reading JSON text with refusals a person can act on. */
import { LARGEST_FILE_BYTES } from './file-size';
import { type Problem, pathText, safeText } from './problem';

/** The file format nests five deep; anything much deeper is not a project and could exhaust the stack of a reader. */
const DEEPEST = 32;

/** Text that cannot be written to a file as it is: one half of a pair that stands for one character. */
const HALF_CHARACTER = /\p{Surrogate}/u;

type Outcome = { ok: true; value: unknown } | { ok: false; problem: Problem };

const refuse = (sentence: string, path = ''): Outcome => ({ ok: false, problem: { path, sentence } });

/** Parsed JSON; a byte order mark and any kind of line ends are accepted. Never throws. */
export function parseJson(text: string): Outcome {
  if (text.length > LARGEST_FILE_BYTES) {
    const allowed = `a project may hold up to ${LARGEST_FILE_BYTES}`;
    return refuse(`The file holds ${text.length} characters; ${allowed}. Give a Ringtrue project file.`);
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (body.trim() === '') return refuse('The file is empty. Give a Ringtrue project file, a JSON text.');
  let value: unknown;
  try {
    value = JSON.parse(body);
  } catch {
    return refuse(`The file is not JSON: ${faultText(body)}. Correct it there, or give another file.`);
  }
  return hostilePart(value) ?? keyGivenTwice(body) ?? { ok: true, value };
}

/** Walks without recursion, for the nesting may be as deep as the file is long. */
function hostilePart(root: unknown): Outcome | null {
  const open: { value: unknown; path: PropertyKey[] }[] = [{ value: root, path: [] }];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    const { value, path } = part;
    if (typeof value === 'string' && HALF_CHARACTER.test(value)) {
      return refuse('The text holds half of a character (a lone surrogate). Type it anew.', pathText(path));
    }
    if (typeof value !== 'object' || value === null) continue;
    if (path.length >= DEEPEST) {
      const place = pathText(path.slice(0, 3));
      return refuse(
        `The file nests more than ${DEEPEST} levels deep; a project nests 5. Take the extra levels out.`,
        place,
      );
    }
    if (Object.hasOwn(value, '__proto__')) {
      return refuse('"__proto__" is not a key of a project. Take it out.', pathText([...path, '__proto__']));
    }
    const halfKey = Object.keys(value).find((key) => HALF_CHARACTER.test(key));
    if (halfKey !== undefined) {
      return refuse('A key holds half of a character (a lone surrogate). Take it out.', pathText(path));
    }
    const isList = Array.isArray(value);
    for (const [key, inner] of Object.entries(value)) {
      if (typeof inner === 'object' || typeof inner === 'string')
        open.push({ value: inner, path: [...path, isList ? Number(key) : key] });
    }
  }
  return null;
}

function endOfString(text: string, start: number): number {
  let at = start + 1;
  while (text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at + 1;
}

/**
 * JSON.parse keeps the last of two values under one key and drops the other without a word; which of them was meant,
 * only the person knows.
 *
 * @param text is JSON
 */
function keyGivenTwice(text: string): Outcome | null {
  const open: { keys: Set<string>; at: PropertyKey }[] = [];
  const marks = /[{}[\],"]/g;
  for (let mark = marks.exec(text); mark !== null; mark = marks.exec(text)) {
    const inner = open.at(-1);
    if (mark[0] === '{') open.push({ keys: new Set(), at: '' });
    else if (mark[0] === '[') open.push({ keys: new Set(), at: 0 });
    else if (mark[0] === '}' || mark[0] === ']') open.pop();
    else if (mark[0] === ',' && typeof inner?.at === 'number') inner.at += 1;
    else if (mark[0] === '"') {
      const end = endOfString(text, mark.index);
      marks.lastIndex = end;
      // Only a key is followed by a colon.
      if (inner === undefined || text[end + matchAt(BLANK, text, end).length] !== ':') continue;
      const key: string = JSON.parse(text.slice(mark.index, end));
      inner.at = key;
      if (inner.keys.has(key)) {
        const path = pathText(open.map(({ at }) => at));
        return refuse(
          `"${safeText(key)}" stands twice in its group, where a key stands once. Take one of them out.`,
          path,
        );
      }
      inner.keys.add(key);
    }
  }
  return null;
}

const BLANK = /[ \t\r\n]*/y;
const SCALAR =
  /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])|"[^"\\\p{Cc}]*(?:\\(?:["\\/bfnrt]|u[\da-fA-F]{4})[^"\\\p{Cc}]*)*"/uy;
const WORD = /"[^"\r\n]*"?|[^\s,:[\]{}"]+|./uy;

function matchAt(pattern: RegExp, text: string, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? '';
}

interface Fault {
  at: number;
  wanted: string;
}

/** The place where a text that is not JSON stops being JSON: JSON.parse tells it differently in every engine. */
function findFault(text: string): Fault {
  const open: ('{' | '[')[] = [];
  let wanted: 'value' | 'value or ]' | 'key' | 'key or }' | 'colon' | 'comma' = 'value';
  let at = 0;
  for (;;) {
    at += matchAt(BLANK, text, at).length;
    const c = text[at];
    const inner = open.at(-1);
    if (wanted === 'colon') {
      if (c !== ':') return { at, wanted: 'a colon' };
      wanted = 'value';
      at += 1;
    } else if (wanted === 'comma') {
      if (inner === undefined) return { at, wanted: 'the end of the file' };
      const close = inner === '{' ? '}' : ']';
      if (c === close) open.pop();
      else if (c === ',') wanted = inner === '{' ? 'key' : 'value';
      else return { at, wanted: `a comma or "${close}"` };
      at += 1;
    } else if ((wanted === 'key or }' && c === '}') || (wanted === 'value or ]' && c === ']')) {
      open.pop();
      wanted = 'comma';
      at += 1;
    } else if (wanted === 'key' || wanted === 'key or }') {
      const key = c === '"' ? matchAt(SCALAR, text, at) : '';
      if (key === '') return { at, wanted: 'a key in double quotes' };
      wanted = 'colon';
      at += key.length;
    } else if (c === '{' || c === '[') {
      open.push(c);
      wanted = c === '{' ? 'key or }' : 'value or ]';
      at += 1;
    } else {
      const scalar = matchAt(SCALAR, text, at);
      if (scalar === '') return { at, wanted: 'a value' };
      wanted = 'comma';
      at += scalar.length;
    }
  }
}

function faultText(text: string): string {
  const { at, wanted } = findFault(text);
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  const place = `line ${line}, column ${column}`;
  if (at >= text.length) return `it ends at ${place} where ${wanted} belongs`;
  return `${place} has ${safeText(matchAt(WORD, text, at))} where ${wanted} belongs`;
}
