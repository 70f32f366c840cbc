/** The sources of error in plain words, for the budget on every surface. */
import type { SourceName } from '../project/document';

export interface SourceWords {
  label: string;
  /** The source as it follows "comes from". */
  cause: string;
  explanation: string;
}

export const SOURCE_WORDS: Readonly<Record<SourceName, SourceWords>> = {
  tiltShared: {
    label: 'Tilt setting',
    cause: 'the tilt setting',
    explanation: 'How far the blade tilt is off, the same in every cut of a setting.',
  },
  tiltSide: {
    label: 'Tilt, side to side',
    cause: 'a tilt that differs from side to side',
    explanation: 'A further tilt error that each side of the blade has of its own.',
  },
  tiltPerCut: {
    label: 'Tilt, cut to cut',
    cause: 'a tilt that changes from cut to cut',
    explanation: 'What the tilt angle changes by from one cut to the next.',
  },
  guideZero: {
    label: 'Guide not square',
    cause: 'a guide that is not square',
    explanation: 'The guide’s square setting is off, the same in every cut.',
  },
  guideSetting: {
    label: 'Finding the swing',
    cause: 'finding the swing',
    explanation: 'How far the swing is off after setting it on the guide.',
  },
  guideSlot: {
    label: 'Play in the slot',
    cause: 'play in the slot',
    explanation: 'The guide sits a little askew in its slot.',
  },
  seat: {
    label: 'Seating the work',
    cause: 'how the work is seated',
    explanation: 'The work does not lie fully against the guide.',
  },
  flatness: {
    label: 'Strips not true',
    cause: 'strips that are not true',
    explanation: 'Strips are a little hollow, and their edges not quite parallel.',
  },
  widthShared: {
    label: 'Width setting',
    cause: 'the width setting',
    explanation: 'The mark or stop is off, the same for every stave.',
  },
  widthPerCut: {
    label: 'Width, cut to cut',
    cause: 'a width that changes from cut to cut',
    explanation: 'Lining up with the mark, or seating on the stop.',
  },
  drift: {
    label: 'Creeping stop',
    cause: 'a stop that creeps',
    explanation: 'The stop creeps a little with every stave.',
  },
  chips: {
    label: 'Chips at the stop',
    cause: 'chips at the stop',
    explanation: 'Now and then a chip lies before the stop and the stave comes out short.',
  },
  kerf: { label: 'Kerf', cause: 'a kerf that changes', explanation: 'The cut is not always equally wide.' },
  thickness: {
    label: 'Stave thickness',
    cause: 'staves of uneven thickness',
    explanation: 'A thicker stave comes out wider when its wide face is up against a stop.',
  },
  deflection: {
    label: 'Blade pushed aside',
    cause: 'a blade that is pushed aside',
    explanation: 'Side force bends the blade, which tilts and moves the cut.',
  },
  bulge: {
    label: 'Faces not flat',
    cause: 'faces that are not flat',
    explanation: 'Side force that changes along a cut leaves the face hollow or round.',
  },
  snags: { label: 'Snags', cause: 'snags', explanation: 'The blade catches in a cut and leaves a step in the face.' },
  truing: {
    label: 'Truing the halves',
    cause: 'truing the halves',
    explanation: 'The end faces of the two halves are not planed quite flat.',
  },
};
