import { type KeyboardEvent, useId, useRef } from 'react';
import { NO_GAP_MM } from '../../sim/geometry/thresholds';
import type { Limits, Piece } from '../../sim/project/document';
import type { JointOpening } from '../../sim/run/single-ring';
import { shownGap } from '../../sim/wording/joints';
import { DrawingPlace } from './drawing-place';
import { type GapOutline, gapOutline, type JointOutline } from './gap-outline';
import { closedPath, Hatch, hatchFill, openPath } from './hatch';
import { jointByKey } from './joint-keys';
import { letteringPx } from './lettering';
import type { Point } from './ring-outline';
import './ring-gaps.css';

export interface RingGapsProps {
  piece: Piece;
  limits: Limits;
  joints: readonly JointOpening[];
  /** How many times wider than they are the gaps are drawn. */
  exaggeration: number;
  /** The joint that is marked everywhere on the page, from 0. */
  marked: number;
  onMark: (joint: number) => void;
  /** What the drawing is of. */
  title: string;
  /** A joint in words, for those who do not see the drawing. */
  wordsFor: (joint: number) => string;
  /** A gap as a figure without its unit. */
  figure: (mm: number) => string;
  widthPx?: number | undefined;
}

const TALLEST_RING_PX = 430;
/** More joints than this have no room for a figure each. */
const MOST_FIGURES = 16;

/** One ring in plan, its gaps drawn wider than they are; its joints can be walked through with the arrow keys. */
export function RingGaps(props: RingGapsProps) {
  return (
    <DrawingPlace piece={props.piece} widthPx={props.widthPx}>
      {(size) => <GapsDrawing {...props} {...size} />}
    </DrawingPlace>
  );
}

interface Sheet {
  outline: GapOutline;
  widthPx: number;
  heightPx: number;
  at: (point: Point) => Point;
  textPx: number;
}

function sheetFor({ piece, joints, exaggeration }: RingGapsProps, widthPx: number, textPx: number): Sheet {
  const outline = gapOutline(piece, joints, exaggeration);
  const points = outline.joints.map(({ outer }) => outer);
  // Room for two lines of lettering around the ring.
  const sideRoomPx = 4 * textPx;
  const endRoomPx = 3.4 * textPx;
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min((widthPx - 2 * sideRoomPx) / (right - left), TALLEST_RING_PX / (bottom - top));
  const centre = { x: widthPx / 2 - ((left + right) / 2) * scale, y: endRoomPx - top * scale };
  return {
    outline,
    widthPx,
    heightPx: Math.ceil((bottom - top) * scale + 2 * endRoomPx),
    at: ({ x, y }) => ({ x: centre.x + x * scale, y: centre.y + y * scale }),
    textPx,
  };
}

function GapsDrawing(props: RingGapsProps & { widthPx: number; textPx: number }) {
  const { joints, marked, onMark, title, wordsFor } = props;
  const sheet = sheetFor(props, props.widthPx, props.textPx);
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const list = useRef<HTMLDivElement>(null);

  const onKeyDown = (event: KeyboardEvent): void => {
    const next = jointByKey(event, marked, joints.length);
    if (next === null) return;
    onMark(next);
    list.current?.querySelectorAll<SVGGElement>('[role="option"]')[next]?.focus();
  };

  return (
    <div ref={list} role="listbox" aria-label={title} tabIndex={-1} className="ring-gaps" onKeyDown={onKeyDown}>
      <svg className="drawing-sheet" role="presentation" width={sheet.widthPx} height={sheet.heightPx}>
        <Hatch id={hatchId} />
        <MarkedPlace outline={sheet.outline.joints[marked]} sheet={sheet} />
        {sheet.outline.staves.map(({ whole, end }, stave) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a stave is its place in the ring.
          <g key={stave}>
            <path className="gap-stave" d={closedPath(whole.map(sheet.at))} />
            {end.length > 0 && <path fill={hatchFill(hatchId)} d={closedPath(end.map(sheet.at))} />}
            {end.length > 0 && <path className="drawing-thin" d={closedPath(end.map(sheet.at))} />}
          </g>
        ))}
        {sheet.outline.joints.map((outline, joint) => (
          <Joint
            // biome-ignore lint/suspicious/noArrayIndexKey: a joint is its place in the ring.
            key={joint}
            {...props}
            joint={joint}
            outline={outline}
            sheet={sheet}
            words={wordsFor(joint)}
            onMark={() => onMark(joint)}
          />
        ))}
      </svg>
    </div>
  );
}

interface JointProps {
  piece: Piece;
  limits: Limits;
  joints: readonly JointOpening[];
  joint: number;
  outline: JointOutline;
  sheet: Sheet;
  marked: number;
  words: string;
  figure: (mm: number) => string;
  onMark: () => void;
}

function Joint({ piece, limits, joints, joint, outline, sheet, marked, words, figure, onMark }: JointProps) {
  const isMarked = joint === marked;
  const { textPx, at } = sheet;
  const opening = joints[joint] ?? { outerMm: 0, innerMm: 0 };
  const gapMm = shownGap(opening, piece.showFace);
  const isOver = gapMm > limits.showGapMm;
  const [outer, inner] = [at(outline.outer), at(outline.inner)];
  const away = (px: number): Point => ({ x: outer.x + outline.away.x * px, y: outer.y + outline.away.y * px });
  const hasFigure = isMarked || joints.length <= MOST_FIGURES;
  const label = away((hasFigure ? 1.9 : 1.1) * textPx);
  const [hitFrom, hitTo] = [at({ x: outline.inner.x * 0.9, y: outline.inner.y * 0.9 }), away(2.4 * textPx)];
  return (
    <g
      role="option"
      aria-label={words}
      aria-selected={isMarked}
      tabIndex={isMarked ? 0 : -1}
      className={`gap-joint${isOver ? ' over' : ''}${isMarked ? ' marked' : ''}`}
      onFocus={onMark}
      onPointerEnter={onMark}
    >
      <path className="gap-space" d={closedPath(outline.gap.map(at))} />
      {opening.outerMm < NO_GAP_MM && <circle className="gap-touch" cx={outer.x} cy={outer.y} r={0.17 * textPx} />}
      {opening.innerMm < NO_GAP_MM && <circle className="gap-touch" cx={inner.x} cy={inner.y} r={0.17 * textPx} />}
      {(hasFigure || (isNumbered(joint, joints.length) && stepsApart(joint, marked, joints.length) > 2)) && (
        <JointLabel
          at={label}
          number={`${joint + 1}`}
          figure={hasFigure ? figure(gapMm) : null}
          textPx={textPx}
          isMarked={isMarked}
        />
      )}
      <path className="gap-reach" d={openPath([hitFrom, hitTo])} strokeWidth={Math.max(24, 1.6 * textPx)} />
    </g>
  );
}

/** Shows behind the staves, so that it does not hide the gap it points at. */
function MarkedPlace({ outline, sheet: { at, textPx } }: { outline: JointOutline | undefined; sheet: Sheet }) {
  if (!outline) return null;
  const [inner, outer] = [at(outline.inner), at(outline.outer)];
  const along = (from: Point, px: number): Point => ({
    x: from.x + outline.away.x * px,
    y: from.y + outline.away.y * px,
  });
  return (
    <path
      className="gap-mark"
      strokeWidth={1.6 * textPx}
      d={openPath([along(inner, -textPx), along(outer, 0.6 * textPx)])}
    />
  );
}

/** Joints between two, the shorter way around. */
function stepsApart(a: number, b: number, count: number): number {
  const steps = Math.abs(a - b);
  return Math.min(steps, count - steps);
}

/** Where joints stand close, every fifth is numbered, and the first and last. */
function isNumbered(joint: number, count: number): boolean {
  return count <= 30 || (joint + 1) % 5 === 0 || joint === 0;
}

interface JointLabelProps {
  at: Point;
  number: string;
  figure: string | null;
  textPx: number;
  isMarked: boolean;
}

/** The joint's number, and under it the gap it shows. */
function JointLabel({ at, number, figure, textPx, isMarked }: JointLabelProps) {
  const lines = figure === null ? 1 : 2;
  const widthPx = Math.max(letteringPx(figure ?? '', textPx), letteringPx(number, textPx)) + textPx;
  const top = at.y - (lines * 1.15 * textPx) / 2;
  return (
    <g>
      {isMarked && (
        <rect
          className="gap-label-mark"
          x={at.x - widthPx / 2}
          y={top - 0.2 * textPx}
          width={widthPx}
          height={lines * 1.15 * textPx + 0.4 * textPx}
          rx={2}
        />
      )}
      <text className="gap-number" fontSize={0.9 * textPx} textAnchor="middle" x={at.x} y={top + 0.9 * textPx}>
        {number}
      </text>
      {figure !== null && (
        <text className="gap-figure" fontSize={textPx} textAnchor="middle" x={at.x} y={top + 2 * textPx}>
          {figure}
        </text>
      )}
    </g>
  );
}
