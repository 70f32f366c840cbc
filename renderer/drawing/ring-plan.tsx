import { useId } from 'react';
import type { Insert, Piece } from '../../sim/project/document';
import { DimensionLine } from './dimension-line';
import { DrawingFrame } from './drawing-frame';
import { DrawingPlace } from './drawing-place';
import type { DrawingProps, SizedDrawing } from './drawing-props';
import { planWords } from './drawing-words';
import { closedPath, Hatch, hatchFill } from './hatch';
import { letteringOf } from './lettering';
import { type PlanSheet, planSheet } from './plan-sheet';
import { type PlanOutline, planOutline, planStave } from './ring-outline';

/** The ring to scale, seen on its narrow end: outlines, joints, the insert, and the sizes that can be measured on it. */
export function RingPlan(props: DrawingProps) {
  return (
    <DrawingPlace piece={props.piece} widthPx={props.widthPx}>
      {(size) => <PlanDrawing {...props} {...size} />}
    </DrawingPlace>
  );
}

function PlanDrawing(props: SizedDrawing) {
  const { piece, widthPx, textPx } = props;
  const hatchId = `hatch${useId().replace(/\W/g, '')}`;
  const lettering = letteringOf(props);
  const plan = planOutline(piece);
  const sheet = planSheet(piece, plan, lettering);
  return (
    <DrawingFrame
      title="Plan of the ring"
      description={planWords(piece, lettering)}
      widthPx={widthPx}
      topPx={sheet.topPx}
      bottomPx={sheet.bottomPx}
    >
      <Hatch id={hatchId} />
      <Staves piece={piece} plan={plan} sheet={sheet} hatchId={hatchId} />
      <Edges plan={plan} sheet={sheet} />
      {sheet.circlesMm.map((radius) => (
        <PlanCircle key={radius} className="drawing-axis" sheet={sheet} radius={radius} />
      ))}
      {piece.insert && <InsertCircles insert={piece.insert} sheet={sheet} />}
      {sheet.insertNote && (
        <text
          className="drawing-text"
          fontSize={textPx}
          textAnchor="middle"
          x={sheet.insertNote.at.x}
          y={sheet.insertNote.at.y}
        >
          {sheet.insertNote.text}
        </text>
      )}
      {sheet.dimensions.map((placed) => (
        <DimensionLine key={`${placed.at.x} ${placed.at.y}`} placed={placed} textPx={textPx} />
      ))}
    </DrawingFrame>
  );
}

interface StavesProps {
  piece: Piece;
  plan: PlanOutline;
  sheet: PlanSheet;
  hatchId: string;
}

/** Every stave alike, turned into its place, the sawn end hatched; their sides are the joint lines. */
function Staves({ piece, plan, sheet, hatchId }: StavesProps) {
  const { centre, scale } = sheet;
  const stave = (inner: number, outer: number) => closedPath(planStave(piece.sides, inner * scale, outer * scale));
  const opening = plan.innerNarrow.radiusMm;
  const turnsDeg = Array.from({ length: piece.sides }, (_, k) => (k * 360) / piece.sides);
  return turnsDeg.map((turnDeg) => (
    <g
      key={turnDeg}
      transform={`translate(${centre.x} ${centre.y}) rotate(${(plan.firstFlatRad * 180) / Math.PI + turnDeg})`}
    >
      <path fill={hatchFill(hatchId)} d={stave(opening, plan.outerNarrow.radiusMm)} />
      <path className="drawing-thin" d={stave(opening, plan.outerWide.radiusMm)} />
    </g>
  ));
}

function Edges({ plan, sheet }: { plan: PlanOutline; sheet: PlanSheet }) {
  const { outerWide, outerNarrow, innerWide, innerNarrow } = plan;
  const path = (size: typeof outerWide) => closedPath(size.corners.map(sheet.at));
  // Of a flat frame the inner edge of the wide end lies right under the outer one.
  const hasHiddenEdge = innerWide.radiusMm > innerNarrow.radiusMm && innerWide.radiusMm < outerWide.radiusMm;
  return (
    <>
      <path className="drawing-outline" d={path(outerWide)} />
      <path className="drawing-outline" d={path(innerNarrow)} />
      <path className="drawing-thin" d={path(outerNarrow)} />
      {hasHiddenEdge && <path className="drawing-hidden" d={path(innerWide)} />}
    </>
  );
}

function PlanCircle({ className, sheet, radius }: { className: string; sheet: PlanSheet; radius: number }) {
  return <circle className={className} cx={sheet.centre.x} cy={sheet.centre.y} r={radius * sheet.scale} />;
}

function InsertCircles({ insert, sheet }: { insert: Insert; sheet: PlanSheet }) {
  return (
    <>
      <PlanCircle className="drawing-insert" sheet={sheet} radius={insert.diameterMm / 2} />
      <PlanCircle className="drawing-hidden" sheet={sheet} radius={(insert.diameterMm + insert.clearanceMm) / 2} />
    </>
  );
}
