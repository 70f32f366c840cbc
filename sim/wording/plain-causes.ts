/** The sources of error for somebody who has never cut a mitre: what the gap comes from, and how it gets there. */
import type { SourceName } from '../project/document';

export interface PlainCause {
  /** As it follows "comes from". */
  what: string;
  /** How it acts on a ring; a sentence. */
  how: string;
}

const IN_ALL = 'This is the same in every cut, so that it adds up around the ring.';
const IN_EACH = 'This differs a little from cut to cut, and what is seen is the worst of the joints.';
const NOW_AND_THEN = 'This happens only now and then, but once is enough for a gap.';

export const PLAIN_CAUSES: Readonly<Record<SourceName, PlainCause>> = {
  tiltShared: { what: 'the angle at which the saw blade is set', how: IN_ALL },
  tiltSide: { what: 'a blade angle that differs a little between the two ends of a piece', how: IN_ALL },
  tiltPerCut: { what: 'a blade angle that changes a little from cut to cut', how: IN_EACH },
  guideZero: { what: 'the guide that carries the wood, which is not perfectly square to the blade', how: IN_ALL },
  guideSetting: { what: 'the angle at which the wood is carried past the blade', how: IN_ALL },
  guideSlot: { what: 'a little play in the guide that carries the wood', how: IN_ALL },
  seat: { what: 'how closely the wood lies against its guide', how: IN_EACH },
  flatness: { what: 'wood that is not perfectly straight and flat', how: IN_EACH },
  widthShared: { what: 'the width to which the pieces are cut', how: IN_ALL },
  widthPerCut: { what: 'pieces that are not all equally wide', how: IN_EACH },
  drift: { what: 'a stop that creeps while the pieces are cut', how: 'This grows from piece to piece.' },
  chips: { what: 'chips of wood caught at the stop, which make a piece too narrow', how: NOW_AND_THEN },
  kerf: { what: 'cuts that are not all equally wide', how: IN_EACH },
  thickness: { what: 'wood that is not equally thick everywhere', how: IN_EACH },
  deflection: { what: 'a saw blade that bends a little in the cut', how: IN_EACH },
  bulge: { what: 'sawn faces that are not perfectly flat', how: IN_EACH },
  snags: { what: 'a saw blade that catches in the wood and leaves a step', how: NOW_AND_THEN },
  truing: {
    what: 'the ends of the two halves, which cannot be planed perfectly flat',
    how: 'What the plane leaves shows where the halves meet.',
  },
};
