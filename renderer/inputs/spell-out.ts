/**
 * Turns the ways figures are written in a workshop into one plain arithmetic expression: `23 5/8"` becomes
 * `((23+5/8)*inch)`, `22°30'` becomes `((22)*degree+(30)*minute)`. What could be read in two ways is refused.
 */
import { NotUnderstood } from './not-understood';
import { type Dimension, UNITS, type UnitSymbol, unitNamed } from './units';

type Token =
  | { kind: 'number'; text: string; spaceBefore: boolean }
  | { kind: 'word'; text: string; spaceBefore: boolean }
  | { kind: 'sign'; text: string; spaceBefore: boolean };

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

function withPlainMarks(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (mark) => ` ${VULGAR_FRACTIONS[mark]}`)
    .replace(/[\u2032\u2018\u2019\u00b4`]/g, "'")
    .replace(/[\u2033\u201c\u201d]|''/g, '"')
    .replace(/[\u00ba\u02da]/g, '°')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u00d7\u00b7]/g, '*')
    .replace(/[\u00f7\u2044]/g, '/');
}

function tokensOf(text: string): Token[] {
  const pattern = /(\s*)(?:(\d[\d.,]*|[.,]\d[\d.,]*)|([\p{L}_]+\d*|[°'"])|([-+*/()]))/uy;
  const tokens: Token[] = [];
  while (pattern.lastIndex < text.length) {
    const start = pattern.lastIndex;
    const match = pattern.exec(text);
    if (!match) {
      const rest = text.slice(start).trimStart();
      throw new NotUnderstood(
        `"${[...rest][0]}" does not belong in a figure. Use numbers, units, + - * / and brackets.`,
      );
    }
    const [, space = '', number, word, sign] = match;
    const spaceBefore = space !== '';
    if (number !== undefined) tokens.push({ kind: 'number', text: decimalPoint(number), spaceBefore });
    else if (word !== undefined) tokens.push({ kind: 'word', text: word, spaceBefore });
    else if (sign !== undefined) tokens.push({ kind: 'sign', text: sign, spaceBefore });
  }
  return tokens;
}

/** `1,5` as 1.5. A comma before exactly three digits may be a thousands mark, and several marks are no number at all. */
function decimalPoint(number: string): string {
  if (/^\d*\.?\d*$/.test(number)) return number;
  const comma = /^(\d*),(\d+)$/.exec(number);
  if (!comma) throw new NotUnderstood(`"${number}" is not one number. Use one decimal point and no thousands marks.`);
  const [, whole = '', decimals = ''] = comma;
  if (decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)) {
    throw new NotUnderstood(
      `"${number}" could mean ${whole}.${decimals} or ${whole}${decimals}. Write it with a point or without the comma.`,
    );
  }
  return `${whole}.${decimals}`;
}

/** Reads the tokens from left to right; every figure with its units becomes one bracketed term. */
class Speller {
  private at = 0;
  constructor(
    private readonly tokens: readonly Token[],
    private readonly wanted: Dimension | 'none',
  ) {}

  expression(): string {
    let out = '';
    while (this.at < this.tokens.length) {
      const token = this.tokens[this.at]!;
      const before = this.tokens[this.at - 1];
      const afterValue = before !== undefined && (before.kind !== 'sign' || before.text === ')');
      if (token.kind === 'number' || token.text === '(') {
        if (afterValue) this.refuseNeighbours(before, token);
      }
      if (token.kind === 'number') out += this.term();
      else if (token.kind === 'word') {
        const unit = this.unit(token);
        if (before?.text !== ')')
          throw new NotUnderstood(`"${token.text}" has no number before it. Write, say, 18 ${token.text}.`);
        out += `*${unit}`;
        this.at += 1;
      } else {
        out += token.text;
        this.at += 1;
      }
    }
    return out;
  }

  /** A figure, with its unit if it has one, and smaller units that follow it directly: 2' 3", 22° 30' 15". */
  private term(): string {
    let out = '';
    let larger: UnitSymbol | undefined;
    for (;;) {
      const started = this.at;
      const { expression, value } = this.figure();
      const token = this.tokens[this.at];
      if (token?.kind !== 'word') {
        if (larger !== undefined) {
          throw new NotUnderstood(
            `"${this.written(started)}" after the ${larger} has no unit. Give every part its unit.`,
          );
        }
        return `(${expression})`;
      }
      const unit = this.unit(token);
      this.at += 1;
      if (larger !== undefined) this.checkPart(larger, unit, value, this.written(started));
      out += `${out === '' ? '' : '+'}(${expression})*${unit}`;
      larger = unit;
      this.refuseDrawnDash();
      if (this.tokens[this.at]?.kind !== 'number') return `(${out})`;
    }
  }

  /** A number, a fraction or a whole number with a fraction. */
  private figure(): { expression: string; value: number } {
    const first = this.number(0)!;
    const dash = this.tokens[this.at + 1];
    if (dash?.text === '-' && !dash.spaceBefore && this.isFraction(2) && !this.tokens[this.at + 2]!.spaceBefore) {
      const [top, bottom] = [this.number(2), this.number(4)];
      throw new NotUnderstood(
        `"${first}-${top}/${bottom}" could mean ${first} and ${top}/${bottom} or ${first} less ${top}/${bottom}. Write "${first} ${top}/${bottom}" or put blanks around the minus.`,
      );
    }
    const [top, bottom] = [this.number(1), this.number(3)];
    if (this.isFraction(1) && /^\d+ \d+ \d+$/.test(`${first} ${top} ${bottom}`)) {
      this.at += 4;
      return { expression: `${first}+${top}/${bottom}`, value: Number(first) + Number(top) / Number(bottom) };
    }
    if (this.isFraction(0)) {
      const bottom = this.number(2)!;
      this.at += 3;
      return { expression: `${first}/${bottom}`, value: Number(first) / Number(bottom) };
    }
    this.at += 1;
    return { expression: first, value: Number(first) };
  }

  private number(ahead: number): string | undefined {
    const token = this.tokens[this.at + ahead];
    return token?.kind === 'number' ? token.text : undefined;
  }

  private isFraction(ahead: number): boolean {
    return (
      this.number(ahead) !== undefined &&
      this.tokens[this.at + ahead + 1]?.text === '/' &&
      this.number(ahead + 2) !== undefined
    );
  }

  private unit(token: Token): UnitSymbol {
    const unit = unitNamed(token.text, this.wanted);
    if (unit === undefined) {
      const known = this.wanted === 'angle' ? 'deg, min and sec' : 'mm, cm, m, in and ft';
      throw new NotUnderstood(
        this.wanted === 'none'
          ? `"${token.text}" is not a number. Give a plain number.`
          : `"${token.text}" is not a unit that is known here. Use ${known}, or a number alone.`,
      );
    }
    return unit;
  }

  private checkPart(larger: UnitSymbol, unit: UnitSymbol, value: number, written: string): void {
    const a = UNITS[larger];
    const b = UNITS[unit];
    if (a.dimension === b.dimension && b.size >= a.size) {
      throw new NotUnderstood(`"${written}" follows a smaller unit. Put the larger unit first, or a + between them.`);
    }
    const most = Math.round(a.size / b.size);
    if (a.dimension === b.dimension && value >= most) {
      throw new NotUnderstood(
        `"${written}" is not below ${most}, which makes one ${larger}. Carry it over, or put a + between.`,
      );
    }
  }

  /** 2'-3" is how drawings write two feet three inches, and also two feet less three inches. */
  private refuseDrawnDash(): void {
    const mark = this.tokens[this.at - 1];
    const dash = this.tokens[this.at];
    const next = this.tokens[this.at + 1];
    if (
      (mark?.text === "'" || mark?.text === '°') &&
      dash?.text === '-' &&
      !dash.spaceBefore &&
      next?.kind === 'number' &&
      !next.spaceBefore
    ) {
      throw new NotUnderstood(
        `The dash in "${this.written(this.at - 2, this.at + 2)}" could join or take away. Leave it out to join, or put blanks around it to take away.`,
      );
    }
  }

  private refuseNeighbours(before: Token, token: Token): never {
    throw new NotUnderstood(`Nothing stands between "${before.text}" and "${token.text}". Put + - * or / there.`);
  }

  private written(from: number, to = this.at): string {
    return this.tokens
      .slice(from, to)
      .map((token) => (token.spaceBefore ? ` ${token.text}` : token.text))
      .join('')
      .trim();
  }
}

/**
 * The expression that `text` stands for, made of numbers, + - * / ( ) and unit symbols.
 * Throws `NotUnderstood` with a sentence when it is not one figure in one reading.
 */
export function spellOut(text: string, wanted: Dimension | 'none'): string {
  return new Speller(tokensOf(withPlainMarks(text).trim()), wanted).expression();
}
