/** The paper: a head ruled like the title block of a drawing, what is on it, and the small print. */
import type { ReactNode } from 'react';
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
  children: ReactNode;
}

export function Sheet({ kind, paper, title, line, foot, children }: SheetProps) {
  return (
    <article className="sheet" data-kind={kind} data-paper={paper} aria-label={`Sheet: ${title}`}>
      <header className="sheet-head">
        <h1>{title}</h1>
        {line !== '' && <p className="sheet-line">{line}</p>}
      </header>
      {children}
      {foot !== undefined && <footer className="sheet-foot">{foot}</footer>}
    </article>
  );
}
