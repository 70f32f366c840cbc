import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isBareNumber,
  type Parsed,
  parseAngle,
  parseLength,
  parsePlain,
} from '../../../renderer/inputs/parse-quantity';
import { figureOf } from './figure-of';

const mm = (text: string, display: 'metric' | 'inch' = 'metric') => figureOf(parseLength(text, display));
const deg = (text: string) => figureOf(parseAngle(text));
const sentence = (parsed: Parsed): string => {
  if (parsed.ok) throw new Error(`understood as ${parsed.understood}`);
  return parsed.sentence;
};

// An inch is 25.4 mm and a foot 12 inches: international yard and pound agreement, 1959 (United States Federal
// Register 24 FR 5348). Minutes and seconds of arc: The International System of Units, 9th edition, table 8.
describe('a length is understood', () => {
  it.each([
    ['600', 600],
    ['18 mm', 18],
    ['1.5cm', 15],
    ['0.6 m', 600],
    ['1 in', 25.4],
    ['1"', 25.4],
    ['2 inches', 50.8],
    ['1 ft', 304.8],
    ["1'", 304.8],
    ['23 5/8 in', 600.075],
    ['23 5/8"', 600.075],
    ['23⅝″', 600.075],
    ['½ in', 12.7],
    ['7/8 in', 22.225],
    ['7/8', 0.875],
    ['18 mm + 1/16 in', 19.5875],
    ['100 + 1/16 in', 101.5875],
    ['2\' 3"', 685.8],
    ['2\'3 1/2"', 698.5],
    ["2' 3''", 685.8],
    ['2 ft - 3 in', 533.4],
    ['1 m 20 cm 5 mm', 1205],
    ['(18 + 2) mm', 20],
    ['3 * 18 mm', 54],
    ['-1/2 in', -12.7],
    ['−5', -5],
    ['600 / 4', 150],
    ['1,5', 1.5],
    ['0,125 in', 3.175],
    ['1,0625 in', 26.9875],
    ['.5 in', 12.7],
    ['  12  ', 12],
  ])('%s is %d mm', (text, expected) => expect(mm(text)).toBe(expected));

  it('with a number alone in the unit that is displayed', () => {
    expect(mm('23 5/8', 'inch')).toBe(600.075);
    expect(mm('23 5/8', 'metric')).toBe(23.625);
    expect(mm('18 mm', 'inch')).toBe(18);
    expect(mm('10 + 1 mm', 'inch')).toBe(255);
  });

  it('and said back with its unit, rounded', () => {
    expect(parseLength('23 5/8 in', 'metric')).toEqual({ ok: true, value: 600.075, understood: '600.08 mm' });
    expect(parseLength('18 mm + 1/16 in', 'inch')).toMatchObject({ understood: '0.7712 in' });
  });

  it('as no minus sign before nothing', () => expect(Object.is(mm('-0'), 0)).toBe(true));

  it('whatever whole inches, sixty-fourths and feet it is written in', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.nat(11), fc.nat(63), (feet, inches, top) => {
        const expected = 25.4 * (12 * feet + inches + top / 64);
        expect(mm(`${feet}' ${inches} ${top}/64"`)).toBeCloseTo(expected, 8);
        expect(mm(`${12 * feet + inches} ${top}/64`, 'inch')).toBeCloseTo(expected, 8);
      }),
    );
  });
});

describe('an angle is understood', () => {
  it.each([
    ['22.5', 22.5],
    ["22°30'", 22.5],
    ['22° 30′ 15″', 22 + 30 / 60 + 15 / 3600],
    ['22 deg 30 min', 22.5],
    ['0.5 deg', 0.5],
    ["30'", 0.5],
    ['30 min', 0.5],
    ['36"', 0.01],
    ["-22°30'", -22.5],
    ['180/8', 22.5],
    ["90° - 22°30'", 67.5],
    ['22 1/2', 22.5],
    ['1,5º', 1.5],
  ])('%s is %d°', (text, expected) => expect(deg(text)).toBeCloseTo(expected, 12));
});

describe('a plain number is understood', () => {
  it.each([
    ['12', 12],
    ['1/500', 0.002],
    ['4294967295', 4294967295],
    ['1 5/8', 1.625],
  ])('%s', (text, expected) => expect(figureOf(parsePlain(text))).toBe(expected));
});

describe('what can be read in two ways is refused and both are named', () => {
  it.each([
    ['1,500', '"1,500" could mean 1.500 or 1500. Write it with a point or without the comma.'],
    ['23-5/8', '"23-5/8" could mean 23 and 5/8 or 23 less 5/8. Write "23 5/8" or put blanks around the minus.'],
    [
      '2\'-3"',
      'The dash in "2\'-3" could join or take away. Leave it out to join, or put blanks around it to take away.',
    ],
  ])('%s', (text, expected) => expect(sentence(parseLength(text, 'inch'))).toBe(expected));

  it('a dash after the degrees too', () => expect(sentence(parseAngle("22°-30'"))).toMatch(/could join or take away/));
});

describe('what is no length is refused with a sentence', () => {
  it.each([
    ['', 'Nothing is written here. Give a length such as 600, 23 5/8 in or 18 mm + 1/16 in.'],
    ['   ', 'Nothing is written here.'],
    ['wide', '"wide" is not a unit that is known here.'],
    ['sqrt(4)', '"sqrt" is not a unit that is known here.'],
    ['x = 2', '"=" does not belong in a figure.'],
    ['import("fs")', '"import" is not a unit that is known here.'],
    ['constructor', '"constructor" is not a unit'],
    ['__proto__', '"__proto__" is not a unit'],
    ['2^3', '"^" does not belong in a figure.'],
    ['1; 2', '";" does not belong in a figure.'],
    ['[1]', '"[" does not belong in a figure.'],
    ['5%', '"%" does not belong in a figure.'],
    ['2 mod 3', 'Nothing stands between|"mod" is not a unit'],
    ['1e9', '"e9" is not a unit'],
    ['Infinity', '"Infinity" is not a unit'],
    ['1/0', 'This divides by 0.'],
    ['5/(3-3)', 'This divides by 0.'],
    ['23 5/0 in', 'This divides by 0.'],
    ['3 mm + 2 deg', 'A length and an angle cannot be added.'],
    ['5 deg', '"5 deg" is an angle. Give a length'],
    ['2 m * 3 m', 'Two figures with units cannot be multiplied.'],
    ['600 mm / 20 mm', 'A figure cannot be divided by one with a unit.'],
    ['2 +', 'This is not finished.'],
    ['(3', 'This is not finished.'],
    ['12 34', 'Nothing stands between "12" and "34".'],
    ['2(3)', 'Nothing stands between "2" and "(".'],
    ['mm', '"mm" has no number before it.'],
    ['2 mm 5', '"5" after the mm has no unit.'],
    ['3" 2\'', '"2\'" follows a smaller unit.'],
    ['2\' 15"', '"15"" is not below 12, which makes one foot.'],
    ['1.2.3', '"1.2.3" is not one number.'],
    ['1,234.5', '"1,234.5" is not one number.'],
    ['100001', 'A length of over 100000 mm is out of reach here.'],
    ['9'.repeat(70), 'A length of over 100000 mm is out of reach here.'],
    ['1+'.repeat(50), 'This is 100 characters long, over 80.'],
  ])('%s', (text, start) => expect(sentence(parseLength(text, 'metric'))).toMatch(matcher(start)));

  function matcher(start: string): RegExp {
    return new RegExp(`^(${start.replace(/[.*+?^${}()[\]\\]/g, '\\$&')})`);
  }
});

describe('what is no angle or number is refused with a sentence', () => {
  it.each(["22°75'", "22°60'"])('%s has too many minutes', (text) =>
    expect(sentence(parseAngle(text))).toMatch(/is not below 60, which makes one degree/),
  );
  it('degrees followed by a number without a unit', () =>
    expect(sentence(parseAngle('22° 30'))).toBe('"30" after the degree has no unit. Give every part its unit.'));
  it('more than a full turn', () =>
    expect(sentence(parseAngle('361'))).toMatch(/^An angle of over 360° is out of reach/));
  it('a length where an angle is wanted', () => expect(sentence(parseAngle('5 mm'))).toMatch(/^"5 mm" is a length/));
  it('a unit where a plain number is wanted', () => {
    expect(sentence(parsePlain('5 mm'))).toMatch(/^"5 mm" is a length. Give a number/);
    expect(sentence(parsePlain('5 + 2 mm'))).toBe('This takes a plain number. Leave the unit out.');
  });
});

describe('whatever is typed', () => {
  const keys = fc.constantFrom(...'0123456789.,/+-*() \'"°mincdegft½′^=;[]{}!%e_$');
  it('a figure or a sentence comes out, never a crash, and a figure is a number within reach', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: keys, maxLength: 14 })), (text) => {
        for (const parsed of [
          parseLength(text, 'metric'),
          parseLength(text, 'inch'),
          parseAngle(text),
          parsePlain(text),
        ]) {
          if (parsed.ok) expect(Math.abs(parsed.value)).toBeLessThanOrEqual(1e12);
          else expect(parsed.sentence).toMatch(/^\S.*\.$/s);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe('a bare number', () => {
  it('is told from what is worth saying back', () => {
    for (const text of ['600', '-0.1', ' 22.5 ', '.5', '5.']) expect(isBareNumber(text)).toBe(true);
    for (const text of ['', '1,5', '23 5/8', '600 mm', '7/8', '.']) expect(isBareNumber(text)).toBe(false);
  });
});
