/** A drawing with the button that keeps it; its title and description are its own. */
import { type ReactNode, useRef } from 'react';
import { useHost } from '../parts/host-context';
import { SaveMenu } from './save-menu';
import { picturesOf } from './ways-to-save';

export function SavedDrawing({ title, children }: { title: string; children: ReactNode }) {
  const host = useHost();
  const place = useRef<HTMLDivElement>(null);
  const drawing = () => [...(place.current?.querySelectorAll('svg.drawing-sheet') ?? [])];
  const ways = picturesOf(host, {
    title,
    description: () => drawing()[0]?.querySelector('desc'),
    blocks: drawing,
  });
  return (
    <div className="saved saved-drawing" ref={place}>
      <SaveMenu what={title} ways={ways} />
      {children}
    </div>
  );
}
