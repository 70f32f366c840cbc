/** The names the error budget uses for the sources, in the order the tables show them. */
export const SOURCE_NAMES = [
  'tiltShared',
  'tiltSide',
  'tiltPerCut',
  'guideZero',
  'guideSetting',
  'guideSlot',
  'seat',
  'flatness',
  'widthShared',
  'widthPerCut',
  'drift',
  'chips',
  'kerf',
  'thickness',
  'deflection',
  'bulge',
  'snags',
  'truing',
] as const;
export type SourceName = (typeof SOURCE_NAMES)[number];
