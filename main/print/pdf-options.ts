/** How a sheet becomes a PDF, by whichever browser: as large as its own @page rules say, tagged, with an outline. */
export const PDF_OPTIONS = {
  printBackground: true,
  preferCSSPageSize: true,
  generateTaggedPDF: true,
  generateDocumentOutline: true,
};
