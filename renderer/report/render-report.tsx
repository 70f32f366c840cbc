/** A sheet as one HTML file by itself: styles inside, drawings as SVG, no scripts, nothing loaded from elsewhere. */
import { renderToStaticMarkup } from 'react-dom/server';
import type { ReportProgram } from '../../main/contract/report';
import drawingCss from '../drawing/drawing.css?inline';
import baseCss from '../parts/base.css?inline';
import cautionsCss from '../parts/caution-groups.css?inline';
import tokensCss from '../parts/tokens.css?inline';
import { ClientSheet } from './client-sheet';
import { MakerSheet } from './maker-sheet';
import sheetCss from './sheet.css?inline';

const PAPER_CSS = ':root { color-scheme: light; } html { background: #fff; }';
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

export const renderReport: ReportProgram['renderReport'] = (input, kind, answers) => {
  const { explain, title } = input.project;
  const heading = kind === 'client' ? explain?.title || title : `${title}, maker’s report`;
  const sheet =
    kind === 'client' ? (
      <ClientSheet {...input} budget={answers.budget} />
    ) : (
      <MakerSheet {...input} answers={answers} />
    );
  const page = renderToStaticMarkup(
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <title>{heading}</title>
        <style>{[tokensCss, baseCss, drawingCss, cautionsCss, sheetCss, PAPER_CSS].join('\n')}</style>
      </head>
      <body>{sheet}</body>
    </html>,
  );
  return `<!doctype html>\n${page}\n`;
};
