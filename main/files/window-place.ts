import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';

/** A rectangle of the screen, in px that do not depend on how dense it is. */
export interface Area {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface WindowPlace extends Area {
  isMaximized: boolean;
}

const SIDE = z.number().int().min(-100_000).max(100_000);
const PLACE = z.object({
  x: SIDE,
  y: SIDE,
  width: SIDE.min(200),
  height: SIDE.min(200),
  isMaximized: z.boolean(),
});

/** So much of a window has to be on a screen that it can be taken hold of. */
const SEEN_PX = 120;

/**
 * @param areas of the screens as they are now
 * @returns null when no place is kept, or none where the window could be taken hold of
 */
export function readWindowPlace(file: string, areas: readonly Area[]): WindowPlace | null {
  try {
    const place = PLACE.parse(JSON.parse(readFileSync(file, 'utf8')));
    return areas.some((area) => isSeen(place, area)) ? place : null;
  } catch {
    return null;
  }
}

function isSeen(place: Area, area: Area): boolean {
  const across = Math.min(place.x + place.width, area.x + area.width) - Math.max(place.x, area.x);
  // Windows are held at the top.
  return across >= SEEN_PX && place.y >= area.y && place.y <= area.y + area.height - SEEN_PX / 2;
}

/** Written at once, since the window is being closed. A machine that keeps nothing is no reason to stay open. */
export function keepWindowPlace(file: string, { x, y, width, height, isMaximized }: WindowPlace): void {
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    writeFileSync(file, JSON.stringify({ x, y, width, height, isMaximized }));
  } catch {
    // The next window opens where windows open.
  }
}
