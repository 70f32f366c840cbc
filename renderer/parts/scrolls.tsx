/** Holds what may be wider than its place, and lets it be scrolled by keyboard as well. */
import type { ReactNode } from 'react';

export function Scrolls({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a mouse.
    <section className="scrolls" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
