/** One number of the project, shown by the field that suits its unit; its label, unit and range come from the one table of fields. */
import type { ReactNode } from 'react';
import { fieldAt, fieldHelp } from '../../sim/project/fields';
import { AngleField } from '../inputs/angle-field';
import { LengthField, OptionalLengthField } from '../inputs/length-field';
import { NumberField, OptionalNumberField } from '../inputs/number-field';
import { beginGesture, endGesture, useDocument } from '../state/document-store';
import { useProblemAt } from '../state/problems';
import { useView } from '../state/view-store';

interface About {
  /** Key path in the project, such as `methods[0].blade.kerfMm`. */
  path: string;
  /** In place of the label in the table of fields. */
  label?: string;
  /** In place of the help in the table of helps. */
  help?: string;
  origin?: ReactNode;
}

const gesture = { onGestureStart: beginGesture, onGestureEnd: endGesture };

function useAbout({ path, label, help, origin }: About) {
  const field = fieldAt(path);
  const problem = useProblemAt(path);
  const display = useDocument((state) => state.project.display);
  const fractions = useView((view) => view.inchFractions);
  const angleStyle = useView((view) => view.angleStyle);
  const common = { label: label ?? field?.label ?? path, help: help ?? fieldHelp(path), origin, problem, ...gesture };
  return { unit: field?.unit ?? '', common, lengthStyle: { display, fractions }, angleStyle };
}

export function NumberAt({ value, onChange, ...about }: About & { value: number; onChange: (value: number) => void }) {
  const { unit, common, lengthStyle, angleStyle } = useAbout(about);
  if (unit === 'mm') return <LengthField {...common} {...lengthStyle} value={value} onChange={onChange} />;
  if (unit === '°') return <AngleField {...common} angleStyle={angleStyle} value={value} onChange={onChange} />;
  return <NumberField {...common} unit={unit || undefined} value={value} onChange={onChange} />;
}

interface Optional extends About {
  value: number | null;
  /** What an empty field stands for. */
  whenEmpty: string;
  onChange: (value: number | null) => void;
}

export function OptionalNumberAt({ value, onChange, whenEmpty, ...about }: Optional) {
  const { unit, common, lengthStyle } = useAbout(about);
  const given = { value, onChange, whenEmpty };
  if (unit === 'mm') return <OptionalLengthField {...common} {...lengthStyle} {...given} />;
  return <OptionalNumberField {...common} unit={unit || undefined} {...given} />;
}
