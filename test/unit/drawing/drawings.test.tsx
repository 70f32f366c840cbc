// @vitest-environment happy-dom
import { cleanup, render } from '@testing-library/react';
import type { ComponentType } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, describe, expect, it } from 'vitest';
import type { DrawingProps } from '../../../renderer/drawing/drawing-props';
import { RingElevation } from '../../../renderer/drawing/ring-elevation';
import { RingPlan } from '../../../renderer/drawing/ring-plan';
import { StaveDrawing } from '../../../renderer/drawing/stave-drawing';
import type { Piece } from '../../../sim/project/document';
import { piece } from './piece';

afterEach(cleanup);

const DRAWINGS: [string, ComponentType<DrawingProps>][] = [
  ['plan', RingPlan],
  ['elevation', RingElevation],
  ['stave', StaveDrawing],
];

const ROWS: Piece[] = [3, 4, 5, 8, 12, 60].flatMap((sides) =>
  [0, 15, 60, 90].flatMap((slopeDeg) => [
    piece(sides, slopeDeg),
    piece(sides, slopeDeg, { heightMm: 240, thicknessMm: 6, size: { by: 'outsideCorners', mm: 1200 } }),
    piece(sides, slopeDeg, { heightMm: 20, thicknessMm: 40, size: { by: 'outsideFlats', mm: 900 } }),
  ]),
);

function sheetOf(Drawing: ComponentType<DrawingProps>, props: DrawingProps): SVGSVGElement {
  const place = document.createElement('div');
  place.innerHTML = renderToStaticMarkup(<Drawing {...props} />);
  return place.querySelector('svg')!;
}

const number = (element: Element, name: string) => Number(element.getAttribute(name) ?? 0);

interface Written {
  text: string;
  /** Corners of the place the lettering takes on the sheet, px. */
  corners: { x: number; y: number }[];
}

const attribute = (attributes: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1];

/**
 * Where every lettering of a drawing stands, read from its markup, much quicker than from a document;
 * letters are taken as 0.55 of their height wide. Shifts and turns are gathered up to the sheet.
 */
function letteringsOf(markup: string): Written[] {
  const around: string[] = [];
  const letterings: Written[] = [];
  for (const [tag, group, attributes, text] of markup.matchAll(/<g\b([^>]*)>|<\/g>|<text\b([^>]*)>([^<]*)<\/text>/g)) {
    if (tag === '</g>') around.pop();
    else if (group !== undefined) around.push(attribute(group, 'transform') ?? '');
    else if (attributes !== undefined && text !== undefined) letterings.push(written(attributes, text, around));
  }
  return letterings;
}

function written(attributes: string, text: string, around: readonly string[]): Written {
  const measure = (name: string) => Number(attribute(attributes, name) ?? 0);
  const high = measure('font-size');
  const wide = text.length * high * 0.55;
  const left = measure('x') - (attribute(attributes, 'text-anchor') === 'middle' ? wide / 2 : 0);
  const foot = measure('y');
  let corners = [
    { x: left, y: foot },
    { x: left + wide, y: foot },
    { x: left, y: foot - 0.75 * high },
    { x: left + wide, y: foot - 0.75 * high },
  ];
  const transforms = [...around, attribute(attributes, 'transform') ?? ''].join(' ');
  for (const [, kind, list = ''] of [...transforms.matchAll(/(translate|rotate)\(([^)]*)\)/g)].reverse()) {
    const [a = 0, b = 0] = list.split(' ').map(Number);
    const [cos, sin] = [Math.cos((a * Math.PI) / 180), Math.sin((a * Math.PI) / 180)];
    corners = corners.map((point) =>
      kind === 'translate'
        ? { x: point.x + a, y: point.y + b }
        : { x: point.x * cos - point.y * sin, y: point.x * sin + point.y * cos },
    );
  }
  return { text, corners };
}

/** Whether two turned rectangles lie over each other: no line along a side of either parts them. */
function lieOverEachOther(a: Written, b: Written): boolean {
  return [a, b].every(({ corners: [start, right, up] }) =>
    [right!, up!].every((end) => {
      const along = { x: end.x - start!.x, y: end.y - start!.y };
      const [spanA, spanB] = [a, b].map(({ corners }) => {
        const places = corners.map((corner) => corner.x * along.x + corner.y * along.y);
        return { low: Math.min(...places), high: Math.max(...places) };
      });
      return spanA!.low < spanB!.high && spanB!.low < spanA!.high;
    }),
  );
}

describe.each(DRAWINGS)('the %s', (_name, Drawing) => {
  it.each([280, 480, 900])(
    'writes every figure on a sheet %d px wide whole and clear of the others',
    (widthPx) => {
      const cutOff: string[] = [];
      const overlaid: string[] = [];
      for (const ring of ROWS) {
        const markup = renderToStaticMarkup(
          <Drawing piece={ring} display="inch" fractions angleStyle="minutes" widthPx={widthPx} />,
        );
        const [left = 0, top = 0, wide = 0, high = 0] = attribute(markup, 'viewBox')!.split(' ').map(Number);
        expect([left, wide]).toEqual([0, widthPx]);
        const letterings = letteringsOf(markup);
        expect(letterings.length).toBeGreaterThan(1);
        const which = `${ring.sides} sides, ${ring.slopeDeg}°, ${ring.heightMm} mm high`;
        letterings.forEach((lettering, index) => {
          const { text, corners } = lettering;
          const isOnSheet = corners.every(({ x, y }) => x >= 0 && x <= wide && y >= top && y <= top + high);
          if (!isOnSheet) cutOff.push(`${which}: "${text}"`);
          const under = letterings.slice(0, index).find((other) => lieOverEachOther(lettering, other));
          if (under) overlaid.push(`${which}: "${text}" over "${under.text}"`);
        });
      }
      expect(cutOff).toEqual([]);
      expect(overlaid).toEqual([]);
    },
    60_000,
  );

  it('keeps the lettering the same size on a small sheet as on a large one', () => {
    const sizes = [280, 900].map((widthPx) => {
      const texts = [...sheetOf(Drawing, { piece: piece(8, 15), display: 'metric', widthPx }).querySelectorAll('text')];
      return new Set(texts.map((text) => number(text, 'font-size')));
    });
    expect(sizes[0]).toEqual(sizes[1]);
    expect(Math.min(...sizes[0]!)).toBeGreaterThanOrEqual(12);
  });

  it('is an image with a name and a text that says the same', () => {
    const sheet = sheetOf(Drawing, { piece: piece(8, 15), display: 'metric' });
    expect(sheet.getAttribute('role')).toBe('img');
    const title = sheet.querySelector('title')!;
    const description = sheet.querySelector('desc')!;
    expect(sheet.getAttribute('aria-labelledby')).toBe(title.id);
    expect(sheet.getAttribute('aria-describedby')).toBe(description.id);
    expect(description.textContent).toContain('18 mm');
  });

  it('gives way to a sentence for a ring that cannot be, and comes back', () => {
    const { container, rerender } = render(<Drawing piece={piece(8, 90, { heightMm: 400 })} display="metric" />);
    expect(container.querySelector('svg')).toBeNull();
    expect(container.textContent).toMatch(/^No drawing: with these sizes the staves meet before the ring closes\./);
    rerender(<Drawing piece={piece(8, 90)} display="metric" />);
    expect(container.querySelector('svg')).not.toBeNull();
  });
});

const words = (sheet: SVGSVGElement) => [...sheet.querySelectorAll('text')].map((text) => text.textContent);

describe('what the drawings say', () => {
  it('the plan names the sizes over flats and corners, the opening, the thickness and the insert', () => {
    const ring = piece(8, 0, { size: { by: 'outsideCorners', mm: 300 }, insert: { diameterMm: 200, clearanceMm: 3 } });
    // Across the flats of an octagon 300 mm over its corners: 300 · cos 22.5° = 277.16 mm (Machinery's Handbook, octagon).
    expect(words(sheetOf(RingPlan, { piece: ring, display: 'metric', widthPx: 600 })).sort()).toEqual([
      '18 mm',
      'clear 241.16 mm',
      'insert ⌀ 200 mm + 3 mm',
      'over the corners 300 mm',
      'over the flats 277.16 mm',
    ]);
  });

  it('the plan of a leaning ring claims no thickness, which cannot be measured on it', () => {
    expect(words(sheetOf(RingPlan, { piece: piece(8, 15), display: 'metric', widthPx: 600 }))).not.toContain('18 mm');
  });

  it('the elevation shows height along the face, thickness, slope and how high the ring stands', () => {
    const shown = words(sheetOf(RingElevation, { piece: piece(8, 30), display: 'metric', widthPx: 600 }));
    // 120 · cos 30° + 18 · sin 30° = 112.92.
    expect(shown.sort()).toEqual(['112.92 mm', '120 mm', '18 mm', '30°']);
  });

  it('the stave shows both settings of the saw', () => {
    const shown = words(sheetOf(StaveDrawing, { piece: piece(4, 38), display: 'metric', widthPx: 600 }));
    // Mitre-saw manuals' crown-moulding table: 38°, four sides: tilt 33.86°, swing 31.62°.
    expect(shown).toContain('tilt 33.86°');
    expect(shown).toContain('swing 31.62°');
  });

  it('an upright stave has no swing to show', () => {
    const shown = words(sheetOf(StaveDrawing, { piece: piece(8, 0), display: 'metric', widthPx: 600 }));
    expect(shown).toContain('tilt 22.5°');
    expect(shown.join()).not.toContain('swing');
  });

  it('figures follow the unit that is displayed', () => {
    const ring = piece(8, 0, { size: { by: 'outsideFlats', mm: 25.4 * 12.5 } });
    const shown = (fractions: boolean) =>
      words(sheetOf(RingPlan, { piece: ring, display: 'inch', fractions, widthPx: 600 }));
    expect(shown(true)).toContain('over the flats 12 1/2 in');
    expect(shown(false)).toContain('over the flats 12.5 in');
  });
});

describe('hatching', () => {
  it('lies on the sawn ends alone: on none of the surfaces a flat frame shows from above', () => {
    const hatched = (slopeDeg: number) => {
      const sheet = sheetOf(RingPlan, { piece: piece(4, slopeDeg), display: 'metric', widthPx: 600 });
      return [...sheet.querySelectorAll('path[fill^="url("]')].map((path) => {
        const xs = [...(path.getAttribute('d') ?? '').matchAll(/[ML](-?[\d.]+) /g)].map((match) => Number(match[1]));
        return Math.max(...xs) - Math.min(...xs);
      });
    };
    expect(hatched(0)).toHaveLength(4);
    expect(Math.min(...hatched(0))).toBeGreaterThan(5);
    expect(Math.max(...hatched(90))).toBe(0);
  });

  it('of one drawing does not leak into another on the same page', () => {
    const page = renderToStaticMarkup(
      <>
        <RingPlan piece={piece(8, 0)} display="metric" />
        <RingElevation piece={piece(8, 0)} display="metric" />
        <StaveDrawing piece={piece(8, 0)} display="metric" />
      </>,
    );
    const ids = [...page.matchAll(/<pattern id="([^"]+)"/g)].map((match) => match[1]!);
    expect(ids).toHaveLength(3);
    expect(new Set(ids).size).toBe(3);
    for (const id of ids) expect(page).toContain(`url(#${id})`);
  });
});
