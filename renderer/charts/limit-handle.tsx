/** The line of the limit across a chart, to be dragged or moved with the arrow keys. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { type GapScale, snapped } from './gap-scale';

interface LimitHandleProps {
  scale: GapScale;
  valueMm: number;
  /** The limit in words, with its unit. */
  valueText: string;
  onChange: (mm: number) => void;
  onGestureStart: () => void;
  onGestureEnd: () => void;
}

const BIG_STEP = 5;

export function LimitHandle({ scale, valueMm, valueText, onChange, onGestureStart, onGestureEnd }: LimitHandleProps) {
  const track = useRef<HTMLDivElement>(null);

  const follow = (event: PointerEvent): void => {
    const box = track.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    onChange(snapped(((event.clientX - box.left) / box.width) * scale.maxMm, scale));
  };

  const onPointerDown = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.querySelector<HTMLElement>('[role="slider"]')?.focus({ preventScroll: true });
    onGestureStart();
    follow(event);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const { stepMm, maxMm } = scale;
    const moves: Record<string, number> = {
      ArrowRight: valueMm + stepMm,
      ArrowUp: valueMm + stepMm,
      ArrowLeft: valueMm - stepMm,
      ArrowDown: valueMm - stepMm,
      PageUp: valueMm + BIG_STEP * stepMm,
      PageDown: valueMm - BIG_STEP * stepMm,
      Home: 0,
      End: maxMm,
    };
    const next = moves[event.key];
    if (next === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    // A key held down is one gesture, from its first press to its release.
    if (!event.repeat) onGestureStart();
    onChange(snapped(next, scale));
  };

  return (
    <div
      ref={track}
      className="limit-track"
      onPointerDown={onPointerDown}
      onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && follow(event)}
      onLostPointerCapture={onGestureEnd}
    >
      <div
        className="limit-handle"
        role="slider"
        tabIndex={0}
        aria-label="Show gap limit"
        aria-valuemin={0}
        aria-valuemax={scale.maxMm}
        aria-valuenow={valueMm}
        aria-valuetext={valueText}
        style={{ insetInlineStart: `${(Math.min(valueMm, scale.maxMm) / scale.maxMm) * 100}%` }}
        onKeyDown={onKeyDown}
        onKeyUp={onGestureEnd}
        onBlur={onGestureEnd}
      >
        <span className="limit-across" aria-hidden="true" />
        <span className="limit-knob" aria-hidden="true">
          {valueText}
        </span>
      </div>
    </div>
  );
}
