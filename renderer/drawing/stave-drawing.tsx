import { ringGeometry } from '../../sim/geometry/ring';
import { angleText, lengthText } from '../../sim/wording/figures';
import { letteringPx } from './dimension-line';
import { DrawingFrame } from './drawing-frame';
import { DrawingPlace } from './drawing-place';
import type { DrawingProps, SizedDrawing } from './drawing-props';
import { staveWords } from './drawing-words';
import { JointDetail, jointDetailSize } from './joint-detail';
import { StaveFace, staveFaceSize } from './stave-face';

/** Room the face and its sizes need to stand beside the joint, in heights of the lettering. */
const NARROWEST_FACE = 22;

/** One stave: its outer face to scale with the swing of the gauge, and its joint, larger, with the tilt of the blade. */
export function StaveDrawing(props: DrawingProps) {
  return (
    <DrawingPlace piece={props.piece} widthPx={props.widthPx}>
      {(size) => <FaceAndJoint {...props} {...size} />}
    </DrawingPlace>
  );
}

function FaceAndJoint({ piece, display, fractions, angleStyle, widthPx, textPx }: SizedDrawing) {
  const geometry = ringGeometry(piece);
  const figure = (mm: number) => lengthText(mm, display, { fractions: fractions === true });
  const angle = (deg: number) => angleText(deg, angleStyle);
  const lettering = { textPx, figure, angle, measure: (text: string) => letteringPx(text, textPx) };
  const joint = jointDetailSize(piece, lettering, widthPx);
  const isSideBySide = widthPx - joint.widthPx >= NARROWEST_FACE * textPx;
  const face = staveFaceSize(piece, lettering, isSideBySide ? widthPx - joint.widthPx : widthPx);
  const heightPx = isSideBySide ? Math.max(face.heightPx, joint.heightPx) : face.heightPx + joint.heightPx + textPx;
  const jointAt = isSideBySide
    ? { x: widthPx - joint.widthPx, y: heightPx - joint.heightPx }
    : { x: (widthPx - joint.widthPx) / 2, y: face.heightPx + textPx };
  return (
    <DrawingFrame
      title="One stave"
      description={staveWords(piece, geometry, figure, angle)}
      widthPx={widthPx}
      heightPx={Math.ceil(heightPx)}
    >
      <g transform={`translate(0 ${isSideBySide ? heightPx - face.heightPx : 0})`}>
        <StaveFace piece={piece} size={face} lettering={lettering} />
      </g>
      <g transform={`translate(${jointAt.x} ${jointAt.y})`}>
        <JointDetail piece={piece} size={joint} lettering={lettering} />
      </g>
    </DrawingFrame>
  );
}
