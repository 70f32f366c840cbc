/** The paper: a head ruled like the title block of a drawing, what is on it, and the small print. */
import type { CSSProperties, ReactNode } from 'react';
import type { Paper, SheetKind } from '../../main/contract/report';
import './sheet.css';

interface SheetProps {
  kind: SheetKind;
  paper: Paper;
  title: string;
  /** Beside the title; may be empty. */
  line: string;
  /** Small print at the end. */
  foot?: string;
  /** Of the lettering; 1 unless told otherwise. */
  scale?: number;
  children: ReactNode;
}

export function Sheet({ kind, paper, title, line, foot, scale = 1, children }: SheetProps) {
  return (
    <article
      className="sheet"
      data-kind={kind}
      data-paper={paper}
      aria-label={`Sheet: ${title}`}
      style={{ '--fit': scale } as CSSProperties}
    >
      <header className="sheet-head">
        <h1>{title}</h1>
        {line !== '' && <p className="sheet-line">{line}</p>}
      </header>
      {children}
      {foot !== undefined && <footer className="sheet-foot">{foot}</footer>}
    </article>
  );
}
