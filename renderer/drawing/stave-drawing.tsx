import { DrawingFrame } from './drawing-frame';
import { DrawingPlace } from './drawing-place';
import type { DrawingProps, SizedDrawing } from './drawing-props';
import { staveWords } from './drawing-words';
import { JointDetail, jointSheet } from './joint-detail';
import { letteringOf } from './lettering';
import { faceSheet, StaveFace } from './stave-face';

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

function FaceAndJoint(props: SizedDrawing) {
  const { piece, widthPx, textPx } = props;
  const lettering = letteringOf(props);
  const joint = jointSheet(piece, lettering);
  const isSideBySide = widthPx - joint.widthPx >= NARROWEST_FACE * textPx;
  const face = faceSheet(piece, { ...lettering, widthPx: isSideBySide ? widthPx - joint.widthPx : widthPx });
  const [faceHighPx, jointHighPx] = [face.bottomPx - face.topPx, joint.bottomPx - joint.topPx];
  const heightPx = isSideBySide ? Math.max(faceHighPx, jointHighPx) : faceHighPx + textPx + jointHighPx;
  const faceBottomPx = isSideBySide ? heightPx : faceHighPx;
  const jointX = isSideBySide ? widthPx - joint.widthPx : (widthPx - joint.widthPx) / 2;
  return (
    <DrawingFrame
      title="One stave"
      description={staveWords(piece, lettering)}
      widthPx={widthPx}
      topPx={0}
      bottomPx={Math.ceil(heightPx)}
    >
      <g transform={`translate(0 ${faceBottomPx - face.bottomPx})`}>
        <StaveFace piece={piece} sheet={face} lettering={lettering} />
      </g>
      <g transform={`translate(${jointX} ${heightPx - joint.bottomPx})`}>
        <JointDetail piece={piece} sheet={joint} lettering={lettering} />
      </g>
    </DrawingFrame>
  );
}
