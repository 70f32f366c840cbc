/**
 * Ways of setting the tilt, carrying the work, fixing the width, and blades. Lengths mm, angles degrees, forces newtons.
 * Presets of one part set the same keys, so that a choice leaves nothing behind of the one before.
 */
import { assumed, type Preset, practice, published } from './preset';

const SQUARE_GRADE_2 = 'DIN 875-1: a 200 mm square of grade 2 is true within 40 µm, which is 0.0115°';
const TAPE_CLASS_2 =
  'EU Measuring Instruments Directive, annex MI-008: a class II tape is true within 0.5 mm over its first metre, ' +
  'a standard deviation of 0.3 mm';
const PENCIL_LEAD = 'pencil leads are 0.3, 0.5 and 0.7 mm thick; half of a 0.5 mm line';
const FLANGE = 'EN 1870-1: the flange measures at least a quarter of the blade diameter';
const STIFFNESS =
  'computed from the plate; Merhar et al., BioResources 12(3) 2017, 5569–5582 measured 0.74 of the ideal disc';

export const TILT_PRESETS: readonly Preset<'tilt'>[] = [
  {
    id: 'sawScale',
    label: 'Scale on the saw',
    explanation: 'The tilt is set by the pointer on the printed scale.',
    figures: {
      biasDeg: assumed(0),
      sharedDeg: practice(0.5),
      shape: practice('uniform'),
      sideDeg: assumed(0.02),
      perCutDeg: assumed(0.03),
      reset: practice('once'),
    },
  },
  {
    id: 'digitalGauge',
    label: 'Digital angle gauge',
    explanation: 'A gauge is zeroed on the table and read on the blade plate; good to 0.1 or 0.2 of a degree.',
    figures: {
      biasDeg: assumed(0),
      sharedDeg: assumed(0.15),
      shape: assumed('uniform'),
      sideDeg: assumed(0.02),
      perCutDeg: assumed(0.03),
      reset: practice('once'),
    },
  },
  {
    id: 'draftedAngle',
    label: 'Drafted angle',
    explanation: 'A card or sliding bevel set from a large drawing is held against the blade plate.',
    figures: {
      biasDeg: assumed(0),
      sharedDeg: assumed(0.1),
      shape: assumed('normal'),
      sideDeg: assumed(0.02),
      perCutDeg: assumed(0.03),
      reset: practice('once'),
    },
  },
  {
    id: 'sineBlocks',
    label: 'Blocks and a known length',
    explanation: 'A bar of known length is raised by a block of computed height and the blade is set against it.',
    figures: {
      biasDeg: assumed(0),
      sharedDeg: assumed(0.05),
      shape: assumed('normal'),
      sideDeg: assumed(0.02),
      perCutDeg: assumed(0.03),
      reset: practice('once'),
    },
  },
  {
    id: 'tunedOnOffcuts',
    label: 'Tuned on offcuts',
    explanation: 'Pairs of offcuts are cut and closed against a known angle until no light shows.',
    figures: {
      biasDeg: assumed(0),
      sharedDeg: assumed(0.04),
      shape: assumed('normal'),
      sideDeg: assumed(0.02),
      perCutDeg: assumed(0.03),
      reset: practice('once'),
    },
  },
];

export const GUIDE_PRESETS: readonly Preset<'guide'>[] = [
  {
    id: 'bareGauge',
    label: 'Mitre gauge as it comes',
    explanation: 'The gauge runs in the table slot and the work lies against its short face.',
    figures: {
      zeroDeg: practice(0.2),
      settingDeg: practice(0.2),
      slotDeg: assumed(0.05),
      seatMm: assumed(0.1),
      faceMm: practice(150),
    },
  },
  {
    id: 'gaugeWithFence',
    label: 'Mitre gauge with a fence',
    explanation: 'A straight strip of wood is screwed to the gauge to lengthen its face.',
    figures: {
      zeroDeg: assumed(0.1),
      settingDeg: assumed(0.1),
      slotDeg: assumed(0.05),
      seatMm: assumed(0.05),
      faceMm: practice(300),
    },
  },
  {
    id: 'squaredGauge',
    label: 'Long fence, squared',
    explanation: 'A long fence on a gauge without play, set with an engineer’s square.',
    figures: {
      zeroDeg: published(0.0115, SQUARE_GRADE_2),
      settingDeg: assumed(0.08),
      slotDeg: assumed(0.02),
      seatMm: assumed(0.04),
      faceMm: practice(500),
    },
  },
  {
    id: 'sled',
    label: 'Sled on two runners',
    explanation: 'A base on two runners carries the work against a fixed back fence.',
    figures: {
      zeroDeg: assumed(0.03),
      settingDeg: assumed(0.04),
      slotDeg: assumed(0.01),
      seatMm: assumed(0.04),
      faceMm: practice(600),
    },
  },
  {
    id: 'ripFence',
    label: 'Rip fence',
    explanation: 'The board runs along the rip fence; for staves with the grain running up.',
    figures: {
      zeroDeg: assumed(0),
      settingDeg: assumed(0.02),
      slotDeg: assumed(0),
      seatMm: assumed(0.1),
      faceMm: practice(800),
    },
  },
];

export const WIDTH_PRESETS: readonly Preset<'width'>[] = [
  {
    id: 'pencilLine',
    label: 'Pencil line',
    explanation: 'Staves are marked with tape and pencil and lined up with the blade by eye.',
    figures: {
      by: practice('markedLine'),
      sharedMm: published(0.3, TAPE_CLASS_2),
      perCutMm: published(0.25, PENCIL_LEAD),
      driftMeanMm: practice(0),
      driftSigmaMm: practice(0),
      chipChance: practice(0),
      chipMeanMm: practice(0),
    },
  },
  {
    id: 'knifeLine',
    label: 'Knife line',
    explanation: 'Staves are marked with tape and knife and lined up with the blade by eye.',
    figures: {
      by: practice('markedLine'),
      sharedMm: published(0.3, TAPE_CLASS_2),
      perCutMm: assumed(0.1),
      driftMeanMm: practice(0),
      driftSigmaMm: practice(0),
      chipChance: practice(0),
      chipMeanMm: practice(0),
    },
  },
  {
    id: 'plainStop',
    label: 'Fixed stop',
    explanation: 'A block clamped to the fence fixes the width; it may creep, and a chip may lie before it.',
    figures: {
      by: practice('fixedStop'),
      sharedMm: published(0.3, TAPE_CLASS_2),
      perCutMm: assumed(0.05),
      driftMeanMm: assumed(0),
      driftSigmaMm: assumed(0.005),
      chipChance: assumed(0.02),
      chipMeanMm: assumed(0.15),
    },
  },
  {
    id: 'relievedStop',
    label: 'Stop with room for dust',
    explanation: 'A stop with a chamfered foot that is brushed clean, set from a measured first stave.',
    figures: {
      by: practice('fixedStop'),
      sharedMm: assumed(0.1),
      perCutMm: assumed(0.03),
      driftMeanMm: assumed(0),
      driftSigmaMm: assumed(0.002),
      chipChance: assumed(0.005),
      chipMeanMm: assumed(0.1),
    },
  },
  {
    id: 'markedFromPattern',
    label: 'Each marked from a pattern',
    explanation: 'Every stave is marked afresh from one pattern stave and cut to its line.',
    figures: {
      by: practice('markedEach'),
      sharedMm: assumed(0.15),
      perCutMm: published(0.25, PENCIL_LEAD),
      driftMeanMm: practice(0),
      driftSigmaMm: practice(0),
      chipChance: practice(0),
      chipMeanMm: practice(0),
    },
  },
];

export const BLADE_PRESETS: readonly Preset<'blade'>[] = [
  {
    id: 'thinKerf',
    label: 'Thin-kerf blade',
    explanation: 'A sharp blade with a thin plate: easy to push, easily pushed aside.',
    figures: {
      diameterMm: practice(250),
      plateMm: practice(1.8),
      collarMm: published(70, FLANGE),
      kerfMm: practice(2.6),
      kerfSigmaMm: assumed(0.03),
      stiffnessNPerMm: published(null, STIFFNESS),
      forceMeanN: assumed(0),
      forceSigmaN: assumed(2),
      forceWithinCutN: assumed(1),
      snagChance: assumed(0.001),
      snagMeanN: assumed(8),
      recutAboveMm: assumed(0.3),
    },
  },
  {
    id: 'fullKerf',
    label: 'Full-kerf blade',
    explanation: 'A sharp blade with a stiff plate.',
    figures: {
      diameterMm: practice(250),
      plateMm: practice(2.2),
      collarMm: published(70, FLANGE),
      kerfMm: practice(3.2),
      kerfSigmaMm: assumed(0.02),
      stiffnessNPerMm: published(null, STIFFNESS),
      forceMeanN: assumed(0),
      forceSigmaN: assumed(2),
      forceWithinCutN: assumed(1),
      snagChance: assumed(0.001),
      snagMeanN: assumed(8),
      recutAboveMm: assumed(0.3),
    },
  },
  {
    id: 'largeMitreSaw',
    label: 'Large mitre-saw blade',
    explanation: 'A 305 mm blade: its plate is long from collar to rim.',
    figures: {
      diameterMm: practice(305),
      plateMm: practice(2.4),
      collarMm: published(80, FLANGE),
      kerfMm: practice(3),
      kerfSigmaMm: assumed(0.03),
      stiffnessNPerMm: published(null, STIFFNESS),
      forceMeanN: assumed(0),
      forceSigmaN: assumed(3),
      forceWithinCutN: assumed(1.5),
      snagChance: assumed(0.002),
      snagMeanN: assumed(8),
      recutAboveMm: assumed(0.3),
    },
  },
  {
    id: 'dull',
    label: 'Dull blade',
    explanation: 'A full-kerf blade that should have been sharpened: it has to be pushed, and it wanders.',
    figures: {
      diameterMm: practice(250),
      plateMm: practice(2.2),
      collarMm: published(70, FLANGE),
      kerfMm: practice(3.2),
      kerfSigmaMm: assumed(0.05),
      stiffnessNPerMm: published(null, STIFFNESS),
      forceMeanN: assumed(15),
      forceSigmaN: assumed(6),
      forceWithinCutN: assumed(4),
      snagChance: assumed(0.01),
      snagMeanN: assumed(15),
      recutAboveMm: assumed(0.3),
    },
  },
];
