/** Keeps the sheet on the screen as a picture, drawn from the page itself. */
import { useHost } from '../parts/host-context';
import { useDocument } from '../state/document-store';
import { useProblems } from '../state/problems';
import { pictureOfSheet } from './picture';
import { pngOf } from './png';
import { exportName, originText, saveExport } from './save-export';

/** Stands in the panel of the sheet. */
export function SaveSheetPicture() {
  const host = useHost();
  const save = (button: HTMLElement): Promise<void> => {
    const { project } = useDocument.getState();
    return saveExport(host, exportName(project, 'client', 'png'), async () => {
      const sheet = button.closest('.sheet-panel')?.querySelector('.sheet');
      if (!sheet) throw new Error('There is no sheet on the screen. Open the page Explain.');
      const title = sheet.getAttribute('aria-label') ?? project.title;
      return pngOf(pictureOfSheet(sheet, { title, description: originText(project) }));
    });
  };
  return (
    <button type="button" disabled={useProblems().length > 0} onClick={(event) => void save(event.currentTarget)}>
      Save as PNG
    </button>
  );
}
