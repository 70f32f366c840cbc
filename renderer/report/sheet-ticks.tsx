/** The ticks of a scale of gaps along the foot of a sheet's chart, as plain SVG. */
import { lengthText } from '../../sim/wording/figures';
import type { GapScale } from '../charts/gap-scale';
import type { Display } from '../inputs/field-props';

interface SheetTicksProps {
  scale: GapScale;
  display: Display;
  /** How long the scale is drawn, px. */
  plotPx: number;
  /** Height of the foot, px from the top. */
  footPx: number;
}

export function SheetTicks({ scale: { ticksMm, maxMm }, display, plotPx, footPx }: SheetTicksProps) {
  return ticksMm.map((mm) => (
    <g key={mm} transform={`translate(${(mm / maxMm) * plotPx} ${footPx})`}>
      <path className="chart-base" d="M0 0V4" />
      <text className="chart-text" textAnchor="middle" y={16}>
        {lengthText(mm, display).replace(/ \w+$/, '')}
      </text>
    </g>
  ));
}
