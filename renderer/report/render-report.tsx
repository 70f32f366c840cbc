/** A sheet as one HTML file by itself: styles inside, drawings as SVG, no scripts, nothing loaded from elsewhere. */
import { renderToStaticMarkup } from 'react-dom/server';
import baseCss from '../app/base.css?inline';
import tokensCss from '../app/tokens.css?inline';
import drawingCss from '../drawing/drawing.css?inline';
import { ClientSheet } from './client-sheet';
import { MakerSheet } from './maker-sheet';
import sheetCss from './sheet.css?inline';
import type { MakerAnswers, SheetInput, SheetKind } from './sheet-input';

export type { MakerAnswers, Paper, SheetInput, SheetKind } from './sheet-input';

const PAPER_CSS = ':root { color-scheme: light; } html { background: #fff; }';
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** @param answers used by the maker's sheet alone */
export function renderReport(input: SheetInput, kind: SheetKind, answers: MakerAnswers): string {
  const { explain, title } = input.project;
  const heading = kind === 'client' ? explain?.title || title : `${title}, maker’s report`;
  const sheet = kind === 'client' ? <ClientSheet {...input} /> : <MakerSheet {...input} answers={answers} />;
  const page = renderToStaticMarkup(
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <title>{heading}</title>
        <style>{[tokensCss, baseCss, drawingCss, sheetCss, PAPER_CSS].join('\n')}</style>
      </head>
      <body>{sheet}</body>
    </html>,
  );
  return `<!doctype html>\n${page}\n`;
}
